#include "port.h"

static int base = 100;
static int sum(int a, int b = 20, int c = base + 3) { return a + b + c; }
struct Line {
    int rate, bits;
    Line(int rate = 1200, int bits = 7) : rate(rate), bits(bits) {}
    int frame(int stop = 1) const { return bits + stop + 1; }
};

int main()
{
    SHOW(sum(1));
    base = 200;
    SHOW(sum(1));
    SHOW(sum(1, 2));
    SHOW(sum(1, 2, 3));
    Line a, b(9600), c(300, 8);
    SHOW(a.rate + a.bits);
    SHOW(b.rate + b.bits);
    SHOW(c.frame());
    SHOW(c.frame(2));
    finish();
}
