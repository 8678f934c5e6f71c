#if 1
taken
#elif 1 / 0
#elif garbage ( ) + *
#endif
#if 0
#if garbage ( ( (
#elif also garbage )
#endif
#endif
done
