#include "work.h"

struct row {
    uint8_t from;
    uint8_t from_bit;
    uint8_t to;
    uint8_t to_bit;
    uint8_t mask;
};

static const struct row rows[] = {
    {2, 0, 0, 5, 0x01}, {2, 1, 0, 4, 0x01}, {1, 6, 0, 2, 0x03},
    {0, 6, 0, 0, 0x03}, {0, 0, 1, 0, 0x3F}, {1, 0, 2, 0, 0x3F},
};

static void encode(int16_t dx, int16_t dy, uint8_t buttons, uint8_t *report)
{
    uint8_t from[3];
    uint8_t at;
    from[0] = (uint8_t)dx;
    from[1] = (uint8_t)-dy;
    from[2] = buttons;
    report[0] = 0x40;
    report[1] = 0;
    report[2] = 0;
    for (at = 0; at < sizeof rows / sizeof rows[0]; at++) {
        const struct row *row = &rows[at];
        report[row->to] |= ((from[row->from] >> row->from_bit) & row->mask) << row->to_bit;
    }
}
