#include "port.h"

int main(void)
{
    volatile uint8_t by = 5;
    volatile int negative = -1000;
    volatile unsigned positive = 60000u;
    volatile uint8_t byte = 0xA5;
    SHOW(negative >> by);
    SHOW(positive >> by);
    SHOW(positive << by);
    SHOW(1L << (by * 6));
    SHOW(1UL << 31 >> by);
    SHOW((int)(1 << by));
    SHOW(byte << by);
    SHOW((uint8_t)(byte << by));
    SHOW((uint8_t)(byte << 3 | byte >> 5));
    byte <<= 2;
    SHOW(byte);
    byte >>= by;
    SHOW(byte);
    negative <<= 2;
    SHOW(negative);
    for (uint8_t mask = 1; mask; mask <<= 1)
        SHOW(byte & mask);
    finish();
    return 0;
}
