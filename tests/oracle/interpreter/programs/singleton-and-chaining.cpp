#include "port.h"

class Config {
    int values[3] = {};
    Config() {}
public:
    static Config &get() { static Config only; return only; }
    Config &set(int i, int v) { values[i] = v; return *this; }
    int at(int i) const { return values[i]; }
};
class Builder {
    uint16_t bits = 0;
public:
    Builder start() const { Builder b = *this; b.bits = b.bits << 1; return b; }
    Builder one() const { Builder b; b.bits = bits << 1 | 1; return b; }
    uint16_t done() const { return bits; }
};

int main()
{
    Config::get().set(0, 5).set(2, 7);
    SHOW(Config::get().at(0) + Config::get().at(1) + Config::get().at(2));
    SHOW(Builder().one().start().one().one().done());
    finish();
}
