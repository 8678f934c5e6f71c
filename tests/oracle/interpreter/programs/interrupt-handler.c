#include "port.h"
#include <avr/interrupt.h>
static volatile uint8_t ticks;
ISR(TIMER0_OVF_vect)
{
    ticks++;
}

int main(void)
{
    cli();
    SHOW(ticks);
    __asm__ __volatile__("nop");
    SHOW(SREG & 0x80);
    finish();
    return 0;
}
