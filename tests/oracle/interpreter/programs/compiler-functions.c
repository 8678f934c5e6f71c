#include "port.h"

static uint8_t odd_parity(uint8_t byte)
{
    return !__builtin_parity(byte);
}

int main(void)
{
    for (int i = 0; i < 256; i += 5) {
        volatile uint8_t byte = i;
        SHOW(odd_parity(byte));
        SHOW(__builtin_popcount(byte));
        SHOW(__builtin_ffs(byte));
        SHOW(__builtin_avr_swap(byte));
    }
    /* What is given is brought to the type that the function takes: 16 bits for an int. */
    volatile long wide = 0x30001L;
    SHOW(__builtin_popcount(wide));
    SHOW(__builtin_popcountl(wide));
    SHOW(__builtin_parityl(wide));
    volatile int8_t low = -1;
    SHOW(__builtin_popcount(low));
    SHOW(__builtin_popcountl(low));
    SHOW(__builtin_popcountll(low));
    volatile uint16_t word = 0x0120;
    SHOW(__builtin_clz(word));
    SHOW(__builtin_clzl(word));
    SHOW(__builtin_clzll(word));
    SHOW(__builtin_ctz(word));
    SHOW(__builtin_ctzl(word));
    SHOW(__builtin_bswap16(word));
    SHOW(__builtin_bswap32(wide));
    SHOW(__builtin_bswap64(word) >> 48);
    if (__builtin_expect(word == 0x0120, 1))
        SHOW(__builtin_ffsl(wide - 1));
    finish();
    return 0;
}
