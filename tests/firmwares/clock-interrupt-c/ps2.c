#include "board.h"
#include "ps2.h"
#include "ticks.h"

#include <avr/interrupt.h>
#include <util/delay.h>

/* @wire means ps2.request-hold */
#define HOLD_US 120

#define FRAME_BITS 11
/* A frame that takes longer than this many milliseconds was cut. */
#define FRAME_MS 3

#define FRAMES 16 /* a power of two */

/* Whole frames, start bit in bit 0, stop bit in bit 10. */
static volatile uint16_t frames[FRAMES];
static volatile uint8_t frames_in;
static uint8_t frames_out;

static volatile uint16_t incoming;
static volatile uint8_t incoming_bits;
static volatile uint8_t incoming_since;

static volatile bool sending;
static volatile uint16_t outgoing;
static volatile uint8_t outgoing_bits;
static volatile bool acknowledged;

static inline void clock_low(void)
{
    PORTD &= ~_BV(CLOCK);
    DDRD |= _BV(CLOCK);
}

static inline void clock_free(void)
{
    DDRD &= ~_BV(CLOCK);
    PORTD |= _BV(CLOCK);
}

static inline void data_low(void)
{
    PORTD &= ~_BV(DATA);
    DDRD |= _BV(DATA);
}

static inline void data_free(void)
{
    DDRD &= ~_BV(DATA);
    PORTD |= _BV(DATA);
}

ISR(INT1_vect)
{
    bool level = PIND & _BV(DATA);

    if (sending) {
        if (outgoing_bits > 0) {
            if (outgoing & 1) {
                data_free();
            } else {
                data_low();
            }
            outgoing >>= 1;
            outgoing_bits--;
        } else {
            acknowledged = !level;
            sending = false;
            incoming_bits = 0;
        }
        return;
    }
    if (incoming_bits > 0 && (uint8_t)(ticks_low - incoming_since) > FRAME_MS) {
        incoming_bits = 0;
    }
    if (incoming_bits == 0) {
        if (level) {
            return; /* no start bit */
        }
        incoming_since = ticks_low;
        incoming = 0;
    }
    if (level) {
        incoming |= 1 << incoming_bits;
    }
    if (++incoming_bits == FRAME_BITS) {
        incoming_bits = 0;
        frames[frames_in] = incoming;
        frames_in = (frames_in + 1) & (FRAMES - 1);
    }
}

void ps2_start(void)
{
    clock_free();
    data_free();
    EICRA = _BV(ISC11); /* falling edge */
    EIFR = _BV(INTF1);
    EIMSK = _BV(INT1);
}

static bool is_odd(uint16_t bits)
{
    bits ^= bits >> 8;
    bits ^= bits >> 4;
    bits ^= bits >> 2;
    bits ^= bits >> 1;
    return bits & 1;
}

enum ps2_frame ps2_next(uint8_t *byte)
{
    uint16_t frame;

    if (frames_out == frames_in) {
        return PS2_NONE;
    }
    frame = frames[frames_out];
    frames_out = (frames_out + 1) & (FRAMES - 1);
    *byte = (uint8_t)(frame >> 1);
    /* Data and parity together have an odd number of ones, and the stop bit is one. */
    return is_odd(frame & 0x3FE) && (frame & 0x400) ? PS2_BYTE : PS2_BROKEN;
}

void ps2_flush(void)
{
    frames_out = frames_in;
}

void ps2_send(uint8_t byte)
{
    uint16_t parity = is_odd(byte) ? 0 : 0x100;

    EIMSK &= ~_BV(INT1);
    clock_low();
    _delay_us(HOLD_US);
    data_low();
    outgoing = byte | parity | 0x200; /* the stop bit is one */
    outgoing_bits = 10;
    acknowledged = false;
    sending = true;
    ps2_flush();
    EIFR = _BV(INTF1);
    EIMSK |= _BV(INT1);
    clock_free();
}

enum ps2_sent ps2_sending(void)
{
    if (sending) {
        return PS2_BUSY;
    }
    return acknowledged ? PS2_TAKEN : PS2_REFUSED;
}

void ps2_give_up(void)
{
    EIMSK &= ~_BV(INT1);
    sending = false;
    acknowledged = false;
    incoming_bits = 0;
    data_free();
    clock_free();
    EIFR = _BV(INTF1);
    EIMSK |= _BV(INT1);
}
