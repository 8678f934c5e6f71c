#include "port.h"

int main(void)
{
    volatile uint8_t byte = 200, other = 100;
    volatile int8_t small = -100;
    volatile uint16_t word = 40000u;
    volatile int16_t half = -20000;
    SHOW(byte + other);
    SHOW((uint8_t)(byte + other));
    SHOW(byte * other);
    SHOW(byte << 8);
    SHOW(~byte);
    SHOW(-byte);
    SHOW(byte - other - other);
    SHOW(small - 100);
    SHOW((int8_t)(small - 100));
    SHOW(word + word);
    SHOW(word * 2);
    SHOW(word * 2L);
    SHOW(half * -1);
    SHOW((long)half * 2);
    SHOW(word + half);
    SHOW(word > half);
    SHOW(byte > small);
    SHOW((unsigned)small > byte);
    SHOW(-1 < 1u);
    SHOW(-1L < 1u);
    SHOW((byte & 0x80) == 0x80);
    SHOW((uint8_t)~byte == 55);
    SHOW(~byte == 55);
    SHOW(small >> 1);
    SHOW((uint8_t)small >> 1);
    SHOW(word >> 15);
    SHOW(half >> 15);
    SHOW('a' + (char)200);
    SHOW(1 ? -1 : 0u);
    SHOW(sizeof(byte + other));
    SHOW(sizeof(1 ? byte : other));
    finish();
    return 0;
}
