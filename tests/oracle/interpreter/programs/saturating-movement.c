#include "port.h"

static int16_t x, y;
static int8_t take(int16_t *from)
{
    int16_t part = *from > 127 ? 127 : *from < -128 ? -128 : *from;
    *from -= part;
    return (int8_t)part;
}

int main(void)
{
    uint16_t seed = 1;
    for (uint8_t i = 0; i < 30; i++) {
        seed = seed * 25173u + 13849u;
        x += (int8_t)(seed >> 8) * 2;
        y -= (int8_t)seed;
        int8_t dx = take(&x), dy = take(&y);
        hex(0x40 | (dy >> 4 & 0x0C) | (dx >> 6 & 0x03), 2);
        hex(dx & 0x3F, 2);
        hex(dy & 0x3F, 2);
        send('\n');
    }
    SHOW(x);
    SHOW(y);
    finish();
    return 0;
}
