#include "board.h"
#include "serial.h"

#include <avr/interrupt.h>

#define BAUD 1200
#define DIVISOR ((F_CPU + 8UL * BAUD) / (16UL * BAUD) - 1) /* nearest, 832 */

static volatile bool asked;

/* RTS moved. */
ISR(PCINT2_vect)
{
    if (!(RTS_PIN & _BV(RTS_BIT))) {
        asked = true;
    }
}

void serial_start(void)
{
    UBRR0 = DIVISOR;
    UCSR0A = 0;
    UCSR0B = _BV(TXEN0);
    UCSR0C = _BV(UCSZ01); /* seven data bits, no parity, one stop bit */

    PCMSK2 = _BV(PCINT20);
    PCICR = _BV(PCIE2);
}

bool serial_is_wanted(void)
{
    return !(RTS_PIN & _BV(RTS_BIT));
}

bool serial_was_asked(void)
{
    if (!asked) {
        return false;
    }
    asked = false;
    return true;
}

bool serial_can_send(void)
{
    return UCSR0A & _BV(UDRE0);
}

void serial_send(uint8_t value)
{
    UDR0 = value;
}
