#include "port.h"

struct Point { int x, y; };
struct Line { Point from, to; };
class Rate {
    uint16_t value;
public:
    Rate(uint16_t v) : value{v} {}
    Rate(uint16_t a, uint16_t b) : value(a * b) {}
    uint16_t get() const { return value; }
};
static Point flipped(Point p) { return { p.y, p.x }; }
static int length(Line line) { return line.to.x - line.from.x; }

int main()
{
    Point p{ 1, 2 }, zero{}, half{ 5 };
    int n{ 7 }, none{};
    int list[]{ 1, 2, 3 };
    SHOW(flipped(p).x);
    SHOW(flipped({ 8, 9 }).y);
    SHOW(zero.x + zero.y + half.x + half.y);
    SHOW(n + none + list[2]);
    SHOW(length({ { 1, 1 }, { 10, 1 } }));
    Rate a{ 5 }, b{ 6, 7 };
    SHOW(a.get() + b.get());
    Rate rates[] = { 3, { 4, 5 } };
    SHOW(rates[0].get() + rates[1].get());
    p = { 30, 40 };
    SHOW(p.x + p.y);
    auto made = Point{ 11, 12 };
    SHOW(made.y);
    finish();
}
