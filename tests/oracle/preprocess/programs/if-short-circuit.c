#if 0 && 1 / 0
#else
and
#endif
#if 1 || 1 / 0
or
#endif
#if 1 ? 2 : 1 / 0
ternary
#endif
#if 0 ? 1 / 0 : 3
ternary again
#endif
#if 0 && (1 ? 2 : 3 / 0) || 1 || (4 % 0)
mixed
#endif
