#define V 3
#if V == 1
one
#elif V == 2
two
#elif V == 3
three
#elif V == 3
three again
#else
many
#endif
#ifdef V
#ifndef W
#if 0
#elif 0
#else
deep
#endif
#endif
#endif
#if 1
#else
#endif
#if 0
# if 1
skipped
# else
skipped
# endif
#elif 1
taken
#endif
