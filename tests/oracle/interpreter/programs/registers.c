#include "port.h"

int main(void)
{
    DDRD = 0xF0;
    PORTD |= 1 << PD6 | 1 << PD4;
    PORTD &= ~(1 << PD6);
    SHOW(PORTD);
    SHOW(DDRD);
    UBRR0 = 832;
    SHOW(UBRR0L);
    SHOW(UBRR0H);
    OCR1A = 0x1234;
    SHOW(OCR1AL);
    volatile uint8_t *port = &PORTB;
    *port = 0x55;
    *port ^= 0x0F;
    SHOW(PORTB);
    GPIOR0 = 3;
    GPIOR0++;
    SHOW(GPIOR0);
    finish();
    return 0;
}
