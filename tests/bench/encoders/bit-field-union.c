#include "work.h"

union packed {
    struct {
        uint8_t x_high : 2;
        uint8_t y_high : 2;
        uint8_t right : 1;
        uint8_t left : 1;
        uint8_t sync : 1;
        uint8_t unused0 : 1;
        uint8_t x_low : 6;
        uint8_t unused1 : 2;
        uint8_t y_low : 6;
        uint8_t unused2 : 2;
    } bits;
    uint8_t bytes[3];
};

static union packed packet;

static void encode(int16_t dx, int16_t dy, uint8_t buttons, uint8_t *report)
{
    uint8_t at;
    packet.bits.sync = 1;
    packet.bits.left = buttons & 1;
    packet.bits.right = buttons >> 1;
    packet.bits.x_high = (uint8_t)dx >> 6;
    packet.bits.x_low = (uint8_t)dx & 0x3F;
    packet.bits.y_high = (uint8_t)-dy >> 6;
    packet.bits.y_low = (uint8_t)-dy & 0x3F;
    for (at = 0; at < sizeof packet.bytes; at++) {
        report[at] = packet.bytes[at];
    }
}
