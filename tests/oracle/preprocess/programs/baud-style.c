#define F_CPU 16000000UL
#define BAUD 1200
#define DIVISOR ((F_CPU + 8UL * BAUD) / (16UL * BAUD) - 1)
#if DIVISOR > 0xFFF
#error too big
#elif DIVISOR == 832
DIVISOR
#endif
#if F_CPU / 16 / (DIVISOR + 1) > BAUD * 102 / 100
too fast
#else
good
#endif
