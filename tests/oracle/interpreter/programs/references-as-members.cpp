#include "port.h"

struct Channel { int level = 0; };
class Mixer {
    Channel &left, &right;
    const int &scale;
public:
    Mixer(Channel &l, Channel &r, const int &s) : left(l), right(r), scale(s) {}
    void set(int v) { left.level = v * scale; right.level = -v * scale; }
    Channel &louder() { return left.level > right.level ? left : right; }
};

/* A reference takes a pointer's room, whatever it refers to. */
class Bit {
    volatile uint8_t &byte;
    uint8_t mask;
public:
    Bit(volatile uint8_t &byte, uint8_t bit) : byte(byte), mask(1 << bit) {}
    void set() { byte |= mask; }
    bool isSet() const { return byte & mask; }
};

int main()
{
    Channel a, b;
    int scale = 2;
    Mixer mixer(a, b, scale);
    mixer.set(10);
    SHOW(a.level);
    scale = 3;
    mixer.set(-10);
    SHOW(b.level);
    mixer.louder().level++;
    SHOW(b.level);
    volatile uint8_t bytes[2] = { 0, 0x10 };
    Bit low(bytes[0], 1), high(bytes[1], 4);
    low.set();
    SHOW(bytes[0]);
    SHOW(high.isSet());
    SHOW(sizeof(Bit));
    finish();
}
