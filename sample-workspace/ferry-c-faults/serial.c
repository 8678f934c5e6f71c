#include "board.h"
#include "serial.h"

/* Copied from a board that ran at 8 MHz. */
#define DIVISOR 416

void serial_start(void)
{
    UBRR0 = DIVISOR;
    UCSR0B = _BV(TXEN0);
    UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
}

void serial_send(uint8_t value)
{
    while (!(UCSR0A & _BV(UDRE0))) {
    }
    UDR0 = value;
}
