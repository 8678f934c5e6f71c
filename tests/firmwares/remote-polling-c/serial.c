#include "ferry.h"

/* 833.3 us, a third of a microsecond is made up for in every third bit. */
#define BIT_US 833

static bool was_on;

void serial_init(void)
{
    PORTB |= _BV(TX_PIN); /* mark, before the pin is an output */
    DDRB |= _BV(TX_PIN);
}

static bool rts(void)
{
    return !(PINB & _BV(RTS_PIN));
}

bool serial_is_wanted(void)
{
    return was_on && rts();
}

static void bit_until(uint16_t from, uint16_t us)
{
    while ((uint16_t)(clock_us() - from) < us) {
    }
}

/* Start bit, seven data bits, stop bit. All edges are measured from the first. */
void serial_byte(uint8_t value)
{
    uint16_t from = clock_us();
    uint16_t until = BIT_US;

    PORTB &= ~_BV(TX_PIN);
    for (uint8_t i = 0; i < 7; i++) {
        bit_until(from, until);
        if (value & 1) {
            PORTB |= _BV(TX_PIN);
        } else {
            PORTB &= ~_BV(TX_PIN);
        }
        value >>= 1;
        until += BIT_US;
        if (i % 3 == 2) {
            until++;
        }
    }
    bit_until(from, until);
    PORTB |= _BV(TX_PIN);
    bit_until(from, until + BIT_US);
}

bool serial_was_asked(void)
{
    bool is_on = rts();
    bool is_new = is_on && !was_on;

    was_on = is_on;
    return is_new;
}
