#include "wires.h"
#include "ps2.h"

/* Looks at the clock, of about 2 us each. A mouse that has something to say begins 50 us after the clock is free, and
 * no phase of its clock is longer than 50 us; both with room to spare. */
#define LOOKS_FOR_START 100
#define LOOKS_IN_BYTE 100
/* It looks at least every 10 ms whether somebody has something for it, and begins 15 ms later at the latest. */
#define START_MS 20

static uint8_t wait_low(uint8_t looks)
{
    while (is_high(CLK)) {
        if (--looks == 0) {
            return 0;
        }
    }
    return 1;
}

static uint8_t wait_high(uint8_t looks)
{
    while (!is_high(CLK)) {
        if (--looks == 0) {
            return 0;
        }
    }
    return 1;
}

static void hold(void)
{
    pull(CLK);
    _delay_us(110); /* shorter, and the mouse may not notice */
}

void ps2_open(void)
{
    PORTC &= ~(1 << CLK | 1 << DAT);
    let_go(CLK);
    let_go(DAT);
    TCCR1B = 1 << CS12 | 1 << CS10;
}

static enum result take_byte(uint8_t *byte)
{
    uint8_t value = 0;
    uint8_t ones = 0;

    /* The clock of the start bit is low. */
    if (is_high(DAT)) {
        return CUT;
    }
    for (uint8_t i = 0; i < 8; i++) {
        if (!wait_high(LOOKS_IN_BYTE) || !wait_low(LOOKS_IN_BYTE)) {
            return CUT;
        }
        value >>= 1;
        if (is_high(DAT)) {
            value |= 0x80;
            ones++;
        }
    }
    if (!wait_high(LOOKS_IN_BYTE) || !wait_low(LOOKS_IN_BYTE)) {
        return CUT;
    }
    if (is_high(DAT)) {
        ones++;
    }
    if (!wait_high(LOOKS_IN_BYTE) || !wait_low(LOOKS_IN_BYTE) || !is_high(DAT)) {
        return CUT;
    }
    if (!wait_high(LOOKS_IN_BYTE)) {
        return CUT;
    }
    *byte = value;
    return ones & 1 ? OK : WRONG_PARITY;
}

enum result ps2_listen(uint8_t *byte)
{
    enum result result = NOTHING;

    let_go(CLK);
    if (wait_low(LOOKS_FOR_START)) {
        result = take_byte(byte);
    }
    hold();
    return result;
}

static uint8_t put_bit(uint8_t bit)
{
    if (bit) {
        let_go(DAT);
    } else {
        pull(DAT);
    }
    return wait_high(LOOKS_IN_BYTE);
}

static enum result give_byte(uint8_t byte)
{
    uint16_t began = now();
    uint8_t parity = 1;

    while (is_high(CLK)) {
        if ((uint16_t)(now() - began) > TICKS(START_MS)) {
            return CUT;
        }
    }
    for (uint8_t i = 0; i < 8; i++) {
        parity ^= byte & 1;
        if (!put_bit(byte & 1) || !wait_low(LOOKS_IN_BYTE)) {
            return CUT;
        }
        byte >>= 1;
    }
    if (!put_bit(parity) || !wait_low(LOOKS_IN_BYTE)) {
        return CUT;
    }
    if (!put_bit(1) || !wait_low(LOOKS_IN_BYTE)) {
        return CUT;
    }
    if (is_high(DAT)) {
        return CUT; /* no acknowledge */
    }
    return wait_high(LOOKS_IN_BYTE) ? OK : CUT;
}

enum result ps2_tell(uint8_t byte)
{
    enum result result;

    hold();
    pull(DAT);
    let_go(CLK);
    result = give_byte(byte);
    let_go(DAT);
    /* The answer follows at once: the clock stays free until ps2_listen has it. */
    return result;
}
