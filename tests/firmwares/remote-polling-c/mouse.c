#include "ferry.h"

#include <util/delay.h>

#define RESET 0xFF
#define SEND_ONCE_MORE 0xFE
#define SET_RESOLUTION 0xE8
#define SET_REMOTE_MODE 0xF0
#define READ_DATA 0xEB

#define ACKNOWLEDGED 0xFA
#define RESEND_REQUEST 0xFE
#define TEST_PASSED 0xAA

/* @wire means ps2.start-timeout */
#define START_MS 16
/* @wire means ps2.reply-timeout */
#define REPLY_MS 30
#define TEST_MS 1100
#define ID_MS 60
/* No phase of the clock is longer than 50 us. */
#define EDGE_US 120

static void clock_down(void)
{
    PORTD &= ~_BV(CLOCK_PIN);
    DDRD |= _BV(CLOCK_PIN);
}

static void clock_up(void)
{
    DDRD &= ~_BV(CLOCK_PIN);
    PORTD |= _BV(CLOCK_PIN);
}

static void data_down(void)
{
    PORTD &= ~_BV(DATA_PIN);
    DDRD |= _BV(DATA_PIN);
}

static void data_up(void)
{
    DDRD &= ~_BV(DATA_PIN);
    PORTD |= _BV(DATA_PIN);
}

static bool edge(uint8_t level)
{
    uint16_t from = clock_us();

    while ((PIND & _BV(CLOCK_PIN)) != level) {
        if ((uint16_t)(clock_us() - from) > EDGE_US) {
            return false;
        }
    }
    return true;
}

#define fall() edge(0)
#define rise() edge(_BV(CLOCK_PIN))

/* Waits for the mouse to begin; the PC may be answered meanwhile, and the mouse is kept quiet for that. */
static bool begins(uint16_t patience_ms, bool may_answer)
{
    restart_ms();
    while (PIND & _BV(CLOCK_PIN)) {
        if (elapsed_ms() > patience_ms) {
            return false;
        }
        if (may_answer && serial_was_asked()) {
            clock_down();
            introduce();
            clock_up();
        }
    }
    return true;
}

static bool read_bits(uint8_t *value)
{
    uint8_t parity = 0;

    if (PIND & _BV(DATA_PIN)) {
        return false;
    }
    for (uint8_t i = 0; i < 9; i++) {
        uint8_t level;

        if (!rise() || !fall()) {
            return false;
        }
        level = PIND & _BV(DATA_PIN) ? 1 : 0;
        parity ^= level;
        if (i < 8) {
            *value = (*value >> 1) | (level << 7);
        }
    }
    if (!rise() || !fall() || !(PIND & _BV(DATA_PIN))) {
        return false;
    }
    return rise() && parity == 1;
}

static bool read_byte(uint8_t *value, uint16_t patience_ms)
{
    return begins(patience_ms, false) && read_bits(value);
}

static bool write_bits(uint8_t value)
{
    uint8_t parity = 1;

    if (!begins(START_MS, false)) {
        return false;
    }
    for (uint8_t i = 0; i < 10; i++) {
        uint8_t level = i < 8 ? value & 1 : i == 8 ? parity : 1;

        if (level) {
            data_up();
        } else {
            data_down();
        }
        parity ^= level;
        value >>= 1;
        if (!rise() || !fall()) {
            return false;
        }
    }
    return !(PIND & _BV(DATA_PIN)) && rise();
}

static bool write_byte(uint8_t value)
{
    bool taken;

    clock_down();
    _delay_us(120);
    data_down();
    clock_up();
    taken = write_bits(value);
    data_up();
    return taken;
}

static bool command(uint8_t value)
{
    for (uint8_t i = 0; i < 3; i++) {
        uint8_t reply;

        if (!write_byte(value) || !read_byte(&reply, REPLY_MS)) {
            return false;
        }
        if (reply != RESEND_REQUEST) {
            return reply == ACKNOWLEDGED;
        }
    }
    return false;
}

void mouse_init(void)
{
    clock_up();
    data_up();
}

bool mouse_setup(void)
{
    uint8_t byte = 0;

    return command(RESET)
        && begins(TEST_MS, true) && read_bits(&byte) && byte == TEST_PASSED
        && read_byte(&byte, ID_MS) && byte == 0
        && command(SET_RESOLUTION) && command(1)
        && command(SET_REMOTE_MODE);
}

/* @wire decodes ps2-standard from bytes into x=state->x y=state->y left=state->left right=state->right middle=state->middle */
static void take_apart(const uint8_t bytes[3], state_t *state)
{
    state->x = bytes[1] | (bytes[0] & 0x10 ? 0xFF00 : 0);
    state->y = bytes[2] | (bytes[0] & 0x20 ? 0xFF00 : 0);
    state->left = bytes[0] & 1;
    state->right = bytes[0] & 2;
    state->middle = bytes[0] & 4;
}

static bool read_report(uint8_t bytes[3])
{
    for (uint8_t i = 0; i < 3; i++) {
        if (!read_byte(&bytes[i], REPLY_MS)) {
            return false;
        }
    }
    return true;
}

bool mouse_ask(state_t *state)
{
    uint8_t bytes[3];

    if (!command(READ_DATA)) {
        return false;
    }
    if (!read_report(bytes)) {
        /* A bit was turned over on the way: the mouse says it all again. */
        _delay_ms(4);
        if (!write_byte(SEND_ONCE_MORE) || !read_report(bytes)) {
            return false;
        }
    }
    if (!(bytes[0] & 0x08)) {
        return false;
    }
    take_apart(bytes, state);
    return true;
}
