#include "port.h"

struct Pair { long a; char b; };
static Pair make() { return { 100000L, 'z' }; }
static auto twice(int v) { return v * 2L; }

int main()
{
    auto a = 5;
    auto b = 5u;
    auto c = 'c';
    auto d = 70000;
    auto e = 1.5f;
    auto pair = make();
    auto *p = &pair;
    auto &alias = pair.a;
    const auto fixed = (uint8_t)200;
    alias++;
    p->b--;
    SHOW(sizeof(a) * 1000 + sizeof(b) * 100 + sizeof(c) * 10 + sizeof(d));
    SHOW(a - 6 < 0);
    SHOW(b - 6 < 0);
    SHOW_REAL(e);
    SHOW(pair.a);
    SHOW(pair.b);
    SHOW(fixed + 100);
    SHOW(sizeof(twice(4)));
    decltype(a) other = 9;
    decltype(p->a) wide = 99999;
    SHOW(other + wide);
    finish();
}
