#include "board.h"
#include "ticks.h"

#include <avr/interrupt.h>

volatile uint8_t ticks_low;
static volatile uint16_t count;

ISR(TIMER2_COMPA_vect)
{
    count++;
    ticks_low++;
}

void ticks_start(void)
{
    OCR2A = 249; /* 16 MHz / 64 / 250 = 1 kHz */
    TCCR2A = _BV(WGM21);
    TCCR2B = _BV(CS22);
    TIMSK2 = _BV(OCIE2A);
}

uint16_t ticks(void)
{
    uint16_t now;
    uint8_t sreg = SREG;

    cli();
    now = count;
    SREG = sreg;
    return now;
}
