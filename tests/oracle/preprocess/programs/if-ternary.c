#if 1 ? 0 ? 1 : 2 : 3
nested
#endif
#if (0 ? 1 : 0 ? 2 : 3) == 3
right to left
#endif
#define A(x) ((x) ? 10 : 20)
#if A(1) + A(0) == 30
macro
#endif
