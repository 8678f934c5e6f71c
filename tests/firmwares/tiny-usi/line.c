#include "tiny.h"

#include <avr/interrupt.h>
#include <util/atomic.h>

static volatile uint16_t ticks;
/* Bits still to be sent, the next one lowest: start bit, seven data bits, stop bit. */
static volatile uint16_t bits;
static volatile uint8_t bits_left;

ISR(TIMER0_COMPA_vect)
{
    if (bits_left > 0) {
        if (bits & 1) {
            PORTB &= ~_BV(TX); /* mark */
        } else {
            PORTB |= _BV(TX);
        }
        bits >>= 1;
        bits_left--;
    }
    ticks++;
    receiver_tick();
}

void line_start(void)
{
    PORTB &= ~_BV(TX);
    DDRB |= _BV(TX);
    OCR0A = 103; /* 8 MHz / 64 / 104: 1202 bits a second */
    TCCR0A = _BV(WGM01);
    TCCR0B = _BV(CS01) | _BV(CS00);
    TIMSK |= _BV(OCIE0A);
}

uint16_t line_ticks(void)
{
    uint16_t now;

    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        now = ticks;
    }
    return now;
}

bool line_is_free(void)
{
    return bits_left == 0;
}

void line_put(uint8_t byte)
{
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        bits = 0x100 | (byte & 0x7F) << 1;
        bits_left = 9;
    }
}
