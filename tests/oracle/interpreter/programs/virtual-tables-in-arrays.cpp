#include "port.h"

struct Effect { virtual int apply(int v) const = 0; virtual ~Effect() {} };
struct Scale : Effect { int by; Scale(int b) : by(b) {} int apply(int v) const override { return v * by; } };
struct Invert : Effect { int apply(int v) const override { return -v; } };
struct Clip : Effect { int low, high; Clip(int l, int h) : low(l), high(h) {} int apply(int v) const override { return v < low ? low : v > high ? high : v; } };
class Chain : public Effect {
    const Effect *effects[4];
    uint8_t count = 0;
public:
    Chain &then(const Effect &e) { effects[count++] = &e; return *this; }
    int apply(int v) const override { for (uint8_t i = 0; i < count; i++) v = effects[i]->apply(v); return v; }
};
static Scale scale(3);
static Invert invert;

int main()
{
    Clip clip(-128, 127);
    Chain chain, outer;
    chain.then(scale).then(invert).then(clip);
    outer.then(chain).then(invert);
    for (int v = -60; v <= 60; v += 30) {
        SHOW(chain.apply(v));
        SHOW(outer.apply(v));
    }
    finish();
}
