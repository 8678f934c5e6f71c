#include "port.h"

/* The values of an assignment, a comma and a conditional are no objects: a callee changes its own copy of them. */

struct movement {
    int8_t x;
    int8_t y;
};

union counts {
    uint16_t both;
    uint8_t each[2];
};

static struct movement last = {1, 2};
static struct movement first = {3, 4};
static union counts held = {0x1234};

static int16_t doubled(struct movement m)
{
    m.x = (int8_t)(m.x * 2);
    m.y = (int8_t)(m.y * 2);
    return (int16_t)(m.x * 100 + m.y);
}

static uint16_t cleared(union counts c, uint8_t index)
{
    c.each[index] = 0;
    return c.both;
}

static struct movement made(int8_t x)
{
    struct movement m = {x, (int8_t)-x};
    return m;
}

int main(void)
{
    volatile uint8_t yes = 1;
    struct movement *p = &last;
    union counts other = {0};
    SHOW(doubled(*p = first));
    SHOW(doubled((yes++, last)));
    SHOW(doubled(yes > 1 ? last : first));
    SHOW(doubled(yes > 5 ? last : made(7)));
    SHOW(doubled((yes++, made(9))));
    SHOW(cleared(other = held, 0));
    SHOW(cleared((yes++, held), 1));
    SHOW(last.x);
    SHOW(last.y);
    SHOW(first.x);
    SHOW(held.both);
    SHOW(other.both);
    finish();
    return 0;
}
