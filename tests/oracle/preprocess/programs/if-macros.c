#define VERSION(a, b, c) ((a) * 10000 + (b) * 100 + (c))
#define CURRENT VERSION(2, 10, 3)
#if CURRENT >= VERSION(2, 9, 0) && CURRENT < VERSION(3, 0, 0)
version
#endif
#define EMPTY
#if EMPTY 1 EMPTY + EMPTY 1 EMPTY == 2
empty
#endif
#define CAT(a, b) a ## b
#if CAT(1, 0) == 10 && CAT(0, x1F) == 31
pasted
#endif
#define OP +
#if 1 OP 2 == 3
operator
#endif
