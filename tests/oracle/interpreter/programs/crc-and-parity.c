#include "port.h"

static uint16_t crc(const uint8_t *bytes, uint8_t count)
{
    uint16_t sum = 0xFFFF;
    while (count--) {
        sum ^= (uint16_t)*bytes++ << 8;
        for (uint8_t bit = 0; bit < 8; bit++)
            sum = sum & 0x8000 ? sum << 1 ^ 0x1021 : sum << 1;
    }
    return sum;
}
static uint8_t odd_parity(uint8_t byte)
{
    byte ^= byte >> 4;
    byte ^= byte >> 2;
    byte ^= byte >> 1;
    return ~byte & 1;
}
static uint8_t reversed(uint8_t b)
{
    b = (b & 0xF0) >> 4 | (b & 0x0F) << 4;
    b = (b & 0xCC) >> 2 | (b & 0x33) << 2;
    return (b & 0xAA) >> 1 | (b & 0x55) << 1;
}

int main(void)
{
    SHOW(crc((const uint8_t *)"123456789", 9));
    for (int i = 0; i < 256; i += 17) {
        SHOW(odd_parity(i));
        SHOW(reversed(i));
    }
    uint16_t lfsr = 0xACE1;
    for (int i = 0; i < 1000; i++)
        lfsr = lfsr >> 1 ^ (-(lfsr & 1) & 0xB400);
    SHOW(lfsr);
    finish();
    return 0;
}
