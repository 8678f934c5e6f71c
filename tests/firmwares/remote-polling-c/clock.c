#include "ferry.h"

static uint16_t last_us;
static uint16_t rest_us;
static uint16_t ms;

void clock_init(void)
{
    TCCR1B = _BV(CS11); /* 8 MHz / 8 */
}

uint16_t clock_us(void)
{
    return TCNT1;
}

void restart_ms(void)
{
    last_us = clock_us();
    rest_us = 0;
    ms = 0;
}

uint16_t elapsed_ms(void)
{
    uint16_t now = clock_us();

    rest_us += now - last_us;
    last_us = now;
    while (rest_us >= 1000) {
        rest_us -= 1000;
        ms++;
    }
    return ms;
}
