#include "wires.h"
#include "pc.h"

static int16_t rest_x;
static int16_t rest_y;
static uint8_t buttons;
static uint8_t told;

static uint8_t report[5];
static uint8_t left_to_send;
static uint8_t was_on;

void pc_open(void)
{
    UBRR0L = 383 & 0xFF; /* 7372800 / 16 / 1200 - 1, to the last count */
    UBRR0H = 383 >> 8;
    UCSR0C = 1 << UCSZ01 | 1 << UCSZ00;
    UCSR0B = 1 << TXEN0;
}

static int8_t slice(int16_t *rest)
{
    int8_t part;

    if (*rest > 120) {
        part = 120;
    } else if (*rest < -120) {
        part = -120; /* -121 and below would look like a header */
    } else {
        part = *rest;
    }
    *rest -= part;
    return part;
}

/* A button that is down is a 0. Both axes grow as the mouse's do, and each has two places, whose sum counts.
 * @wire encodes five-byte from x=x1 y=y1 left=down.0 right=down.1 middle=down.2 into report */
static void fill_report(int8_t x1, int8_t y1, int8_t x2, int8_t y2, uint8_t down)
{
    report[0] = 0x80 | (down & 1 ? 0 : 4) | (down & 4 ? 0 : 2) | (down & 2 ? 0 : 1);
    report[1] = x1;
    report[2] = y1;
    report[3] = x2;
    report[4] = y2;
}

static void next_report(void)
{
    int8_t x1;
    int8_t y1;

    if (rest_x == 0 && rest_y == 0 && buttons == told) {
        return;
    }
    x1 = slice(&rest_x);
    y1 = slice(&rest_y);
    fill_report(x1, y1, slice(&rest_x), slice(&rest_y), buttons);
    told = buttons;
    left_to_send = 5;
}

void pc_serve(void)
{
    uint8_t on = !(PIND & 1 << RTS);

    if (on && !was_on) {
        rest_x = 0;
        rest_y = 0;
        told = 0;
        left_to_send = 0;
        while (!(UCSR0A & 1 << UDRE0)) {
        }
        UDR0 = 'H';
    }
    was_on = on;
    if (!(UCSR0A & 1 << UDRE0)) {
        return;
    }
    if (left_to_send == 0 && on) {
        next_report();
    }
    if (left_to_send > 0) {
        UDR0 = report[5 - left_to_send];
        left_to_send--;
    }
}

uint8_t pc_has_room(void)
{
    return buttons == told;
}

void pc_put(const struct pace *pace)
{
    rest_x += pace->x;
    rest_y += pace->y;
    buttons = pace->buttons;
}
