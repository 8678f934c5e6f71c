#undef SPEED
#ifdef OLD
#define SPEED 300
#else
#define SPEED 1200
#define BITS(n) (1 << (n)) - 1
#endif
