/*
 * What each program of this folder has to do: encode a report for every movement of 128 counts each way on y and
 * `rows` counts on x. The sum over all bytes tells whether two runs made the same reports.
 */
#ifndef WORK_H
#define WORK_H

#include <stdint.h>

#define REPORT_BYTES 5

static void encode(int16_t dx, int16_t dy, uint8_t buttons, uint8_t *report);

uint16_t work(uint16_t rows)
{
    uint8_t report[REPORT_BYTES] = {0};
    uint16_t sum = 0;
    uint16_t row;
    for (row = 0; row < rows; row++) {
        int16_t dy;
        for (dy = -128; dy < 128; dy++) {
            uint8_t at;
            encode((int16_t)(row - 128), dy, (uint8_t)(dy & 3), report);
            for (at = 0; at < REPORT_BYTES; at++) {
                sum += report[at];
            }
            sum = (uint16_t)(sum << 1 | sum >> 15);
        }
    }
    return sum;
}

#endif
