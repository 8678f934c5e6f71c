#include "port.h"

enum { LEFT, RIGHT, MIDDLE, COUNT };
struct setting { const char *name; uint16_t rate; struct { int8_t x, y; } origin; uint8_t on[4]; };

static const uint8_t masks[COUNT] = { [MIDDLE] = 4, [LEFT] = 1, 2 };
static struct setting settings[] = {
    [2] = { .rate = 1200, .name = "slow", .on = { [1] = 7, 8 } },
    [0] = { "fast", .origin = { .y = -3 }, .on[3] = 1 },
};

int main(void)
{
    int sparse[] = { [3] = 3, 4, [1] = 1, 2 };
    for (int i = 0; i < COUNT; i++) {
        SHOW(masks[i]);
    }
    SHOW(sizeof settings / sizeof *settings);
    SHOW(sizeof sparse / sizeof *sparse);
    for (int i = 0; i < 5; i++) {
        SHOW(sparse[i]);
    }
    SHOW_TEXT(settings[0].name);
    SHOW_TEXT(settings[2].name);
    SHOW(settings[1].name == 0);
    SHOW(settings[0].origin.x);
    SHOW(settings[0].origin.y);
    SHOW(settings[0].on[3]);
    SHOW(settings[2].on[2]);
    SHOW(settings[2].rate);
    finish();
    return 0;
}
