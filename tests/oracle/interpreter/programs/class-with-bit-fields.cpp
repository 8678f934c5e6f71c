#include "port.h"

class Flags {
    union {
        struct { uint8_t left : 1, right : 1, middle : 1, spare : 5; };
        uint8_t all;
    };
public:
    Flags(uint8_t v = 0) : all(v) {}
    void press(int n, bool down)
    {
        switch (n) {
        case 0: left = down; break;
        case 1: right = down; break;
        case 2: middle = down; break;
        }
    }
    uint8_t value() const { return all; }
    bool any() const { return left || right || middle; }
};

int main()
{
    Flags flags;
    SHOW(flags.any());
    flags.press(0, true);
    flags.press(2, true);
    SHOW(flags.value());
    flags.press(0, false);
    SHOW(flags.value());
    SHOW(flags.any());
    SHOW(sizeof(Flags));
    finish();
}
