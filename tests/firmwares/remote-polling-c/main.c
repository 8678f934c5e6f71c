#include "ferry.h"

#include <util/delay.h>

#define RETRY_MS 300

static bool sent_left, sent_right, sent_middle;

/* The PC counts y downwards.
 * @wire encodes middle-button from x=x y=-y left=left right=right middle=middle into serial_byte */
static void send_report(int8_t x, int8_t y, bool left, bool right, bool middle)
{
    uint8_t down = (uint8_t)-y;

    serial_byte(0x40 | left << 5 | right << 4 | (down & 0xC0) >> 4 | (uint8_t)x >> 6);
    serial_byte(x & 0x3F);
    serial_byte(down & 0x3F);
    if (middle || sent_middle) {
        serial_byte(middle ? 0x20 : 0);
    }
}

static int8_t step(int16_t way)
{
    return way > 127 ? 127 : way < -127 ? -127 : way;
}

static void tell(state_t state)
{
    while (state.x != 0 || state.y != 0 || state.left != sent_left || state.right != sent_right
        || state.middle != sent_middle) {
        int8_t x = step(state.x);
        int8_t y = step(state.y);

        if (!serial_is_wanted()) {
            return;
        }
        send_report(x, y, state.left, state.right, state.middle);
        sent_left = state.left;
        sent_right = state.right;
        sent_middle = state.middle;
        state.x -= x;
        state.y -= y;
    }
}

void introduce(void)
{
    serial_byte('M');
    serial_byte('3');
    /* The PC forgets which buttons are down. */
    sent_left = sent_right = sent_middle = false;
}

static void look_at_pc(void)
{
    if (serial_was_asked()) {
        introduce();
    }
}

int main(void)
{
    state_t state;

    clock_init();
    serial_init();
    mouse_init();
    for (;;) {
        while (!mouse_setup()) {
            restart_ms();
            while (elapsed_ms() < RETRY_MS) {
                look_at_pc();
            }
        }
        do {
            look_at_pc();
            if (!mouse_ask(&state)) {
                break;
            }
            tell(state);
        } while (true);
    }
}
