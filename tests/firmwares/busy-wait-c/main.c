#include "wires.h"
#include "pc.h"
#include "ps2.h"

enum {
    RESET = 0xFF,
    SAY_AGAIN = 0xFE,
    REPORTS_ON = 0xF4,
    SET_RATE = 0xF3,
    FINE = 0xFA,
    AGAIN_PLEASE = 0xFE,
    SELF_TEST_OK = 0xAA
};

#define REPLY_MS 40
#define SELF_TEST_MS 1100
#define ID_MS 100
#define GAP_MS 15
#define RETRY_MS 300
#define TRIES 3

/* Waits for one byte of the mouse and looks after the PC meanwhile. */
static enum result answer(uint8_t *byte, uint16_t patience)
{
    uint16_t began = now();
    enum result result;

    do {
        result = ps2_listen(byte);
        pc_serve();
    } while (result == NOTHING && (uint16_t)(now() - began) <= patience);
    return result;
}

static uint8_t command(uint8_t value)
{
    uint8_t reply;

    for (uint8_t i = 0; i < TRIES; i++) {
        if (ps2_tell(value) != OK || answer(&reply, TICKS(REPLY_MS)) != OK) {
            return 0;
        }
        if (reply != AGAIN_PLEASE) {
            return reply == FINE;
        }
    }
    return 0;
}

static uint8_t set_up(void)
{
    uint8_t byte;

    return command(RESET)
        && answer(&byte, TICKS(SELF_TEST_MS)) == OK && byte == SELF_TEST_OK
        && answer(&byte, TICKS(ID_MS)) == OK && byte == 0
        && command(SET_RATE) && command(60)
        && command(REPORTS_ON);
}

/* @wire decodes ps2-standard from bytes into x=pace->x y=pace->y left=pace->buttons.0 right=pace->buttons.1 middle=pace->buttons.2 */
static void take_apart(const uint8_t *bytes, struct pace *pace)
{
    pace->x = bytes[0] & 0x10 ? bytes[1] - 256 : bytes[1];
    pace->y = bytes[0] & 0x20 ? bytes[2] - 256 : bytes[2];
    pace->buttons = bytes[0] & 7;
}

int main(void)
{
    uint8_t packet[3];
    uint8_t length = 0;
    uint16_t last = 0;
    uint8_t ready = 0;
    struct pace pace;

    pc_open();
    ps2_open();
    for (;;) {
        uint8_t byte;
        enum result result;

        pc_serve();
        if (!ready) {
            ready = set_up();
            length = 0;
            for (uint16_t from = now(); !ready && (uint16_t)(now() - from) < TICKS(RETRY_MS);) {
                pc_serve();
            }
            continue;
        }
        if (!pc_has_room()) {
            continue; /* the clock is low, and the mouse counts on */
        }
        result = ps2_listen(&byte);
        if (length > 0 && (uint16_t)(now() - last) > TICKS(GAP_MS)) {
            if (length == 2 && packet[0] == SELF_TEST_OK && packet[1] == 0) {
                ready = 0; /* it restarted on its own */
            }
            length = 0;
        }
        if (result == WRONG_PARITY) {
            length = 0;
            ps2_tell(SAY_AGAIN);
            continue;
        }
        if (result != OK || (length == 0 && !(byte & 8))) {
            continue;
        }
        last = now();
        packet[length++] = byte;
        if (length == 3) {
            length = 0;
            take_apart(packet, &pace);
            pc_put(&pace);
        }
    }
}
