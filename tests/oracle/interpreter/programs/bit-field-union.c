#include "port.h"

typedef union {
    struct { uint8_t left : 1, right : 1, middle : 1, always : 1, x_sign : 1, y_sign : 1, x_over : 1, y_over : 1; int8_t x, y; } part;
    uint8_t bytes[3];
} report_t;

static void send_report(int16_t x, int16_t y, uint8_t buttons)
{
    report_t report = { .bytes = { 0 } };
    report.part.always = 1;
    report.part.left = buttons;
    report.part.right = buttons >> 1;
    report.part.middle = buttons >> 2;
    report.part.x_sign = x < 0;
    report.part.y_sign = y < 0;
    report.part.x_over = x > 255 || x < -256;
    report.part.y_over = y > 255 || y < -256;
    report.part.x = x;
    report.part.y = y;
    for (uint8_t i = 0; i < sizeof report.bytes; i++) {
        hex(report.bytes[i], 2);
    }
    send('\n');
}

int main(void)
{
    for (int16_t x = -400; x <= 400; x += 133) {
        for (int16_t y = -300; y <= 300; y += 150) {
            send_report(x, y, (uint8_t)(x ^ y));
        }
    }
    finish();
    return 0;
}
