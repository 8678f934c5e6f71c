#include "board.h"
#include "ps2.h"

#include <avr/interrupt.h>
#include <util/delay.h>

#define CMD_RESET 0xFF
#define CMD_SET_SAMPLE_RATE 0xF3
#define CMD_SET_RESOLUTION 0xE8

/* @wire means ps2.request-hold */
#define REQUEST_HOLD_US 52

#define RING_SIZE 16

static uint8_t ring[RING_SIZE];
static uint8_t ring_head;
static uint8_t ring_tail;

static uint8_t frame_bit;
static uint8_t frame_byte;

static void clock_low(void)
{
    PORTD &= ~_BV(PS2_CLOCK);
    DDRD |= _BV(PS2_CLOCK);
}

static void clock_release(void)
{
    DDRD &= ~_BV(PS2_CLOCK);
    PORTD |= _BV(PS2_CLOCK);
}

static void data_low(void)
{
    PORTD &= ~_BV(PS2_DATA);
    DDRD |= _BV(PS2_DATA);
}

static void data_high(void)
{
    DDRD |= _BV(PS2_DATA);
    PORTD |= _BV(PS2_DATA);
}

static void data_release(void)
{
    DDRD &= ~_BV(PS2_DATA);
    PORTD |= _BV(PS2_DATA);
}

ISR(INT0_vect)
{
    _delay_us(80);
    if (frame_bit > 0 && frame_bit < 9) {
        frame_byte >>= 1;
        if (PIND & _BV(PS2_DATA)) {
            frame_byte |= 0x80;
        }
    }
    if (++frame_bit == 11) {
        frame_bit = 0;
        ring[ring_head] = frame_byte;
        ring_head = (ring_head + 1) % RING_SIZE;
    }
}

static void clock_pulse(void)
{
    while (PIND & _BV(PS2_CLOCK)) {
    }
    while (!(PIND & _BV(PS2_CLOCK))) {
    }
}

static void ps2_send(uint8_t value)
{
    uint8_t parity = 1;

    EIMSK &= ~_BV(INT0);
    clock_low();
    _delay_us(REQUEST_HOLD_US);
    data_low();
    clock_release();
    for (uint8_t i = 0; i < 8; i++) {
        while (PIND & _BV(PS2_CLOCK)) {
        }
        if (value & 1) {
            data_high();
            parity ^= 1;
        } else {
            data_low();
        }
        value >>= 1;
        while (!(PIND & _BV(PS2_CLOCK))) {
        }
    }
    while (PIND & _BV(PS2_CLOCK)) {
    }
    if (parity) {
        data_release();
    } else {
        data_low();
    }
    clock_pulse();
    data_release();
    clock_pulse();
    frame_bit = 0;
    EIMSK |= _BV(INT0);
}

void ps2_start(void)
{
    clock_release();
    data_release();
    EICRA = _BV(ISC01);
    EIMSK = _BV(INT0);
}

bool ps2_read(uint8_t *value)
{
    if (ring_tail == ring_head) {
        return false;
    }
    *value = ring[ring_tail];
    ring_tail = (ring_tail + 1) % RING_SIZE;
    return true;
}

static void command(uint8_t value)
{
    uint8_t reply;

    ps2_send(value);
    while (!ps2_read(&reply)) {
    }
}

void ps2_set_up_mouse(void)
{
    command(CMD_RESET);
    _delay_ms(20);
    command(CMD_SET_SAMPLE_RATE);
    command(50);
    command(CMD_SET_RESOLUTION);
    command(2);
}
