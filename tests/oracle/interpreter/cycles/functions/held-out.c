#include "measured.h"

/* Functions that the cost model was not made with: they only say how far off it is elsewhere. */

#define KEYS 4

struct event {
    uint8_t kind;
    uint16_t at;
    int8_t move[2];
};

struct event events[8];
static volatile uint8_t event_head;
static uint8_t event_tail;
static volatile uint16_t ticks;
static uint8_t history[KEYS];
uint8_t frame[6] = { 0x47, 0x1f, 0x30, 0x02, 0x55, 0xaa };

/* calls: (1, 5, -5) (2, 100, 7) (0, 0, 0) */
MEASURED bool put_event(uint8_t kind, int8_t x, int8_t y)
{
    uint8_t next = (event_head + 1) & 7;
    if (next == event_tail) {
        return false;
    }
    struct event *event = &events[event_head];
    event->kind = kind;
    event->at = ticks;
    event->move[0] = x;
    event->move[1] = y;
    event_head = next;
    return true;
}

/* calls: (0x3f) (0x00) (0x15) */
MEASURED uint8_t debounce(uint8_t pins)
{
    uint8_t pressed = 0;
    for (uint8_t key = 0; key < KEYS; key++) {
        history[key] = (history[key] << 1) | ((pins >> key) & 1);
        if ((history[key] & 0x0f) == 0x0f) {
            pressed |= 1 << key;
        }
    }
    return pressed;
}

/* calls: (frame, 6) (frame, 1) */
MEASURED uint8_t crc8(const uint8_t *bytes, uint8_t length)
{
    uint8_t crc = 0xff;
    while (length--) {
        crc ^= *bytes++;
        for (uint8_t bit = 0; bit < 8; bit++) {
            crc = crc & 0x80 ? (crc << 1) ^ 0x31 : crc << 1;
        }
    }
    return crc;
}

/* calls: (0xc5) (0x00) */
MEASURED void shift_byte_out(uint8_t byte)
{
    for (uint8_t mask = 0x80; mask; mask >>= 1) {
        if (byte & mask) {
            PORTB |= 1 << 3;
        } else {
            PORTB &= ~(1 << 3);
        }
        PORTB |= 1 << 5;
        PORTB &= ~(1 << 5);
    }
}

/* calls: () () () () */
MEASURED uint16_t read_frame(void)
{
    uint16_t bits = 0;
    for (uint8_t count = 0; count < 11; count++) {
        uint8_t patience = 200;
        while (PIND & (1 << 2)) {
            if (--patience == 0) {
                return 0xffff;
            }
        }
        bits >>= 1;
        if (PIND & (1 << 3)) {
            bits |= 0x8000;
        }
        while (!(PIND & (1 << 2))) {
        }
    }
    return bits;
}

/* calls: (300, -20) (-5000, 3) (127, 1) */
MEASURED int16_t scaled(int16_t counts, int16_t factor)
{
    int32_t product = (int32_t)counts * factor;
    if (product > 32767) {
        return 32767;
    }
    if (product < -32768) {
        return -32768;
    }
    return product / 3;
}

static int16_t left_x, left_y;
uint8_t left_buttons;

/* calls: (5, 200, 1) (-300, 20, 0) (0, 0, 3) */
MEASURED uint8_t make_report(int16_t x, int16_t y, uint8_t buttons)
{
    left_x += x;
    left_y -= y;
    int16_t now_x = left_x, now_y = left_y;
    if (now_x > 127) {
        now_x = 127;
    } else if (now_x < -128) {
        now_x = -128;
    }
    if (now_y > 127) {
        now_y = 127;
    } else if (now_y < -128) {
        now_y = -128;
    }
    left_x -= now_x;
    left_y -= now_y;
    left_buttons = buttons;
    frame[0] = 0x40 | ((buttons & 1) << 5) | ((buttons & 2) << 3) | ((now_y & 0xc0) >> 4) | ((now_x & 0xc0) >> 6);
    frame[1] = now_x & 0x3f;
    frame[2] = now_y & 0x3f;
    return frame[0];
}

static volatile uint8_t edge_count;
static volatile uint8_t shift_register;

/* calls: () () */
ISR(INT1_vect)
{
    uint8_t level = PIND & (1 << 3);
    shift_register >>= 1;
    if (level) {
        shift_register |= 0x80;
    }
    if (++edge_count == 11) {
        edge_count = 0;
        ticks++;
    }
}
