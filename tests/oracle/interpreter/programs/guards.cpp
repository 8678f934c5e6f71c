// Guards in the style of firmware: interrupts off, a chip selected, a pin low, for as long as a block lasts.
#include "port.h"
#include <avr/interrupt.h>

static volatile uint8_t flags = 0x80, selects, depth;
class InterruptLock {
    uint8_t before;
public:
    InterruptLock() : before(flags) { flags &= ~0x80; }
    ~InterruptLock() { flags = before; }
    InterruptLock(const InterruptLock &) = delete;
};
class Selected {
    uint8_t mask;
    bool active = true;
public:
    explicit Selected(uint8_t pin) : mask(1 << pin) { selects |= mask; depth++; }
    Selected(Selected &&o) : mask(o.mask), active(o.active) { o.active = false; }
    ~Selected() { if (!active) return; selects &= ~mask; depth--; }
    uint8_t transfer(uint8_t out) const { return selects & mask ? (uint8_t)(out ^ 0xff) : 0; }
};
static Selected select(uint8_t pin) { Selected s(pin); return s; }
static uint8_t status(uint8_t pin) { return select(pin).transfer(0x0f); }
static bool wait(uint8_t limit)
{
    for (uint8_t i = 0; i < 10; i++) {
        InterruptLock lock;
        if (i == limit) return true;
    }
    return false;
}
static int nested()
{
    InterruptLock outer;
    {
        InterruptLock inner;
        if (flags & 0x80) return 1;
    }
    return flags & 0x80 ? 2 : 3;
}

int main()
{
    SHOW(nested()); SHOW_HEX(flags);
    SHOW(wait(3)); SHOW(wait(20)); SHOW_HEX(flags);
    SHOW_HEX(status(2)); SHOW(depth);
    {
        Selected a = select(1), b(static_cast<Selected &&>(a));
        SHOW_HEX(selects); SHOW(depth); SHOW_HEX(b.transfer(0));
    }
    SHOW_HEX(selects); SHOW(depth);
    SHOW_HEX((InterruptLock(), flags)); SHOW_HEX(flags);
    finish();
}
