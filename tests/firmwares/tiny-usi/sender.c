#include "tiny.h"

#include <util/delay.h>

/* From the first pull to the last clock: 15 ms until the mouse begins, and 2 ms for the byte. */
#define SEND_TICKS TICKS(18)

static uint16_t began;

static void pull(uint8_t pin)
{
    DDRB |= _BV(pin);
}

static void let_go(uint8_t pin)
{
    DDRB &= ~_BV(pin);
}

static bool until_clock(bool high)
{
    while (!(PINB & _BV(CLOCK)) == high) {
        if ((uint16_t)(line_ticks() - began) > SEND_TICKS) {
            return false;
        }
    }
    return true;
}

static bool tell_bit(bool bit)
{
    if (!until_clock(false)) {
        return false;
    }
    if (bit) {
        let_go(DATA);
    } else {
        pull(DATA);
    }
    return until_clock(true);
}

static bool tell_frame(uint8_t byte)
{
    bool odd = true;

    for (uint8_t mask = 1; mask != 0; mask <<= 1) {
        if (byte & mask) {
            odd = !odd;
        }
        if (!tell_bit(byte & mask)) {
            return false;
        }
    }
    if (!tell_bit(odd) || !tell_bit(true) || !until_clock(false)) {
        return false;
    }
    return !(PINB & _BV(DATA)) && until_clock(true);
}

bool mouse_tell(uint8_t byte)
{
    bool taken;

    receiver_off();
    pull(CLOCK);
    _delay_us(150);
    pull(DATA);
    let_go(CLOCK);
    began = line_ticks();
    taken = tell_frame(byte);
    let_go(DATA);
    receiver_on();
    return taken;
}
