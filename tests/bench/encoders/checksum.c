#include "work.h"

/* CRC-8 with the polynomial x^8 + x^5 + x^4 + 1, the least significant bit first, as _crc_ibutton_update has it. */
static uint8_t checksum(const uint8_t *bytes, uint8_t count)
{
    uint8_t crc = 0;
    while (count-- > 0) {
        uint8_t bit;
        crc ^= *bytes++;
        for (bit = 0; bit < 8; bit++) {
            crc = crc & 1 ? (crc >> 1) ^ 0x8C : crc >> 1;
        }
    }
    return crc;
}

static void encode(int16_t dx, int16_t dy, uint8_t buttons, uint8_t *report)
{
    report[0] = 0x80 | (~buttons & 7);
    report[1] = (uint8_t)dx;
    report[2] = (uint8_t)dy;
    report[3] = 0;
    report[4] = checksum(report, 4);
}
