#include "work.h"

static int8_t clipped(int16_t count)
{
    if (count > 127) {
        return 127;
    }
    return count < -127 ? -127 : (int8_t)count;
}

static void encode(int16_t dx, int16_t dy, uint8_t buttons, uint8_t *report)
{
    int8_t x = clipped(dx * 2);
    int8_t y = clipped(-dy);
    report[0] = 0x40 | (buttons & 1) << 5 | (buttons & 2) << 3 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
    report[1] = x & 0x3F;
    report[2] = y & 0x3F;
}
