#include "port.h"

/* Reports as bytes and as fields at once, set up by constructors. */
struct Report {
    union {
        struct {
            uint8_t left : 1;
            uint8_t right : 1;
            uint8_t middle : 1;
            uint8_t one : 1;
            uint8_t xSign : 1, ySign : 1, xOver : 1, yOver : 1;
            uint8_t x, y;
        };
        uint8_t bytes[3];
    };
    Report() : bytes() { one = 1; }
    Report(uint8_t b, int dx, int dy) : left(b & 1), right(b >> 1 & 1), one(1), xSign(dx < 0), ySign(dy < 0), x(dx), y(dy) {}
    uint8_t sum() const { return bytes[0] + bytes[1] + bytes[2]; }
};
class Timer {
    union { uint16_t both; struct { uint8_t low, high; }; };
    struct { uint8_t divider = 8, mode; };
    const uint8_t id;
public:
    Timer(uint16_t start, uint8_t m) : both(start), mode(m), id(low ^ high) {}
    Timer(uint8_t l, uint8_t h, int) : low(l), high(h), divider(64), mode(0), id(0xFF) {}
    void dump() const
    {
        hex(both, 4); send(' '); hex(low, 2); hex(high, 2); send(' ');
        hex(divider, 2); hex(mode, 2); hex(id, 2); send('\n');
    }
};
struct Outer {
    int tag;
    union {
        long whole;
        struct { union { uint8_t first; int8_t sfirst; }; uint8_t rest[3]; };
    };
    explicit Outer(long v) : tag(1), whole(v) {}
    Outer(uint8_t f, char) : tag(2), first(f) { rest[0] = rest[1] = rest[2] = 7; }
};
union Word {
    uint16_t value;
    uint8_t byte[2];
    explicit Word(uint16_t v) : value(v) {}
    Word(uint8_t l, uint8_t h) : byte{ l, h } {}
    uint16_t swapped() const { return byte[0] << 8 | byte[1]; }
};

int main()
{
    Report none, some(3, -5, 200);
    SHOW(none.bytes[0] * 100 + none.sum());
    hex(some.bytes[0], 2); hex(some.bytes[1], 2); hex(some.bytes[2], 2); send('\n');
    some.middle = 1;
    some.x++;
    SHOW(some.sum());
    Timer a(0x1234, 5), b(0xCD, 0xAB, 0);
    a.dump();
    b.dump();
    Outer o(0x01020384L), p(0xF0, 'c');
    SHOW(o.tag * 1000 + o.first + o.rest[2]);
    SHOW(o.sfirst);
    SHOW_HEX(p.whole);
    Word w(0xBEEF), v(1, 2);
    SHOW(w.swapped() == 0xEFBE);
    SHOW(v.value);
    SHOW(sizeof(Report) * 100 + sizeof(Outer));
    finish();
}
