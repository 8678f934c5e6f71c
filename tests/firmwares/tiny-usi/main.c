#include "tiny.h"

#include <avr/interrupt.h>

#define RESET 0xFF
#define REPORTS_ON 0xF4
#define SET_RATE 0xF3
#define GOOD 0xFA
#define ONCE_MORE 0xFE
#define ALIVE 0xAA

#define REPLY_TICKS TICKS(30)
#define ALIVE_TICKS TICKS(1100)
#define ID_TICKS TICKS(100)
#define GAP_TICKS TICKS(12)
#define RETRY_TICKS TICKS(400)

static uint8_t packet[3];
static uint8_t packet_length;
static uint16_t packet_at;

/* What the PC does not know yet. */
static int16_t to_right;
static int16_t to_top;
static uint8_t buttons;
static uint8_t told;

static uint8_t report[3];
static uint8_t report_at = 3;
static bool was_on;

/* @wire encodes two-button from x=dx y=-dy left=b.0 right=b.1 into report */
static void make_report(int8_t dx, int8_t dy, uint8_t b)
{
    uint8_t down = -dy; /* the PC counts downwards */

    report[0] = 0x40 | (b & 1 ? 0x20 : 0) | (b & 2 ? 0x10 : 0) | (down >> 4 & 0x0C) | ((uint8_t)dx >> 6);
    report[1] = dx & 0x3F;
    report[2] = down & 0x3F;
}

static int8_t clipped(int16_t way)
{
    if (way > 127) {
        return 127;
    }
    return way < -127 ? -127 : way;
}

static void look_after_pc(void)
{
    bool on = PINB & _BV(RTS);

    if (on && !was_on) {
        while (!line_is_free()) {
        }
        line_put('M');
        report_at = 3;
        to_right = 0;
        to_top = 0;
        told = 0;
    }
    was_on = on;
    if (!line_is_free()) {
        return;
    }
    if (report_at == 3 && on && (to_right != 0 || to_top != 0 || buttons != told)) {
        int8_t dx = clipped(to_right);
        int8_t dy = clipped(to_top);

        make_report(dx, dy, buttons);
        to_right -= dx;
        to_top -= dy;
        told = buttons;
        report_at = 0;
    }
    if (report_at < 3) {
        line_put(report[report_at++]);
    }
}

static bool next_byte(uint8_t *byte, uint16_t patience)
{
    uint16_t since = line_ticks();

    while (!receiver_has()) {
        if ((uint16_t)(line_ticks() - since) > patience) {
            return false;
        }
        look_after_pc();
    }
    *byte = receiver_get();
    return true;
}

static bool hear(uint8_t wanted, uint16_t patience)
{
    uint8_t byte;

    return next_byte(&byte, patience) && byte == wanted;
}

static bool command(uint8_t byte)
{
    for (uint8_t i = 0; i < 3; i++) {
        uint8_t reply;

        receiver_forget();
        if (!mouse_tell(byte) || !next_byte(&reply, REPLY_TICKS)) {
            return false;
        }
        if (reply != ONCE_MORE) {
            return reply == GOOD;
        }
    }
    return false;
}

static bool set_up(void)
{
    packet_length = 0;
    return command(RESET) && hear(ALIVE, ALIVE_TICKS) && hear(0, ID_TICKS)
        && command(SET_RATE) && command(40) && command(REPORTS_ON);
}

/* @wire decodes ps2-standard from bytes into x=dx y=dy left=b.0 right=b.1 */
static void take_apart(const uint8_t bytes[3], int16_t *dx, int16_t *dy, uint8_t *b)
{
    *dx = (bytes[0] & 0x10 ? -256 : 0) + bytes[1];
    *dy = (bytes[0] & 0x20 ? -256 : 0) + bytes[2];
    *b = bytes[0] & 3;
}

/* False when the mouse has started anew and has to be set up again. */
static bool look_after_mouse(void)
{
    int16_t dx;
    int16_t dy;

    if (packet_length > 0 && (uint16_t)(line_ticks() - packet_at) > GAP_TICKS) {
        bool restarted = packet_length == 2 && packet[0] == ALIVE && packet[1] == 0;

        packet_length = 0;
        if (restarted) {
            return false;
        }
    }
    /* A change of the buttons goes to the PC before the next report is looked at, if the PC listens. */
    while ((buttons == told || !was_on) && receiver_has()) {
        uint8_t byte = receiver_get();

        if (packet_length == 0 && !(byte & 0x08)) {
            continue;
        }
        packet_at = line_ticks();
        packet[packet_length++] = byte;
        if (packet_length == 3) {
            packet_length = 0;
            take_apart(packet, &dx, &dy, &buttons);
            to_right += dx;
            to_top += dy;
        }
    }
    return true;
}

int main(void)
{
    bool ready = false;
    uint16_t tried;

    line_start();
    receiver_on();
    sei();
    tried = line_ticks() - RETRY_TICKS;
    for (;;) {
        if (!ready && (uint16_t)(line_ticks() - tried) >= RETRY_TICKS) {
            ready = set_up();
            tried = line_ticks();
        }
        if (ready) {
            ready = look_after_mouse();
        }
        look_after_pc();
    }
}
