#include "port.h"

constexpr unsigned long clock = 16000000UL;
constexpr uint16_t divisor(uint32_t rate) { return (clock + rate * 8) / (rate * 16) - 1; }
constexpr int power(int base, int to) { return to == 0 ? 1 : base * power(base, to - 1); }
struct Size { int w, h; constexpr Size(int w, int h) : w(w), h(h) {} constexpr int area() const { return w * h; } };
constexpr Size size(6, 7);
static int table[power(2, 4)];
constexpr uint8_t masks[] = { 1, 2, 4, 8 };
static_assert(divisor(9600) == 103, "divisor");

int main()
{
    SHOW(divisor(1200));
    SHOW(sizeof table / sizeof *table);
    SHOW(size.area());
    SHOW(power(3, 5));
    volatile int n = 3;
    SHOW(power(n, 3));
    for (auto mask : masks)
        SHOW(mask);
    switch (42) {
    case size.area(): text("area\n");
    }
    finish();
}
