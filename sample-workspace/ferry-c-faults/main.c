#include "board.h"
#include "ps2.h"
#include "serial.h"

#include <avr/interrupt.h>
#include <stdlib.h>

/* Loops to wait before the PC is awake. */
static const uint16_t wake_up_loops = 60 * 1000;

/* @wire encodes two-button from x=dx y=-dy left=left right=right into out
 * @wire try rihgt=12 press=left */
static void build_report(uint8_t out[3], int8_t dx, int8_t dy, uint8_t left, uint8_t right)
{
    uint8_t y = (uint8_t)dy;

    out[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 4) & 0x0C) | ((uint8_t)dx >> 6);
    out[1] = dx & 0x3F;
    out[2] = y & 0x3F;
}

int main(void)
{
    uint8_t packet[3];
    uint8_t report[3];
    uint8_t length = 0;

    for (volatile uint16_t i = 0; i < wake_up_loops; i++) {
    }
    serial_start();
    ps2_start();
    sei();
    ps2_set_up_mouse();
    for (;;) {
        if (!ps2_read(&packet[length])) {
            continue;
        }
        if (++length == 3) {
            length = 0;
            build_report(report, packet[1], packet[2], packet[0] & 1, (packet[0] >> 1) & 1);
            for (uint8_t i = 0; i < 3; i++) {
                serial_send(report[i]);
            }
        }
    }
}
