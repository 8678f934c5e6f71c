#include "board.h"
#include "clock.h"

#include <avr/interrupt.h>
#include <util/atomic.h>

static volatile uint16_t milliseconds;

ISR(TIMER0_COMPA_vect)
{
    milliseconds++;
}

void clock_start(void)
{
    /* Clear on compare, 16 MHz / 64 / 250 = 1 kHz. */
    TCCR0A = _BV(WGM01);
    TCCR0B = _BV(CS01) | _BV(CS00);
    OCR0A = 249;
    TIMSK0 = _BV(OCIE0A);
}

uint16_t clock_ms(void)
{
    uint16_t now;

    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        now = milliseconds;
    }
    return now;
}
