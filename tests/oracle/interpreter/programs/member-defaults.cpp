#include "port.h"

struct Settings {
    uint16_t rate = 1200;
    uint8_t bits = 7, stop{1};
    bool inverted = false;
    const char *name = "plain";
    int8_t table[3] = { 1, 2, 3 };
    Settings() {}
    Settings(uint16_t r) : rate(r), inverted(true) {}
    Settings(const char *n) : Settings(2400) { name = n; }
};

int main()
{
    Settings a, b(9600), c("named");
    SHOW(a.rate + a.bits + a.stop + a.inverted);
    SHOW(b.rate + b.inverted + b.table[2]);
    SHOW_TEXT(c.name);
    SHOW(c.rate);
    SHOW(c.inverted);
    finish();
}
