#include "port.h"

template <typename F> static int sum(F f, int n)
{
    int total = 0;
    for (int i = 0; i < n; i++)
        total += f(i);
    return total;
}
static int apply(int (*f)(int), int v) { return f(v); }

int main()
{
    int offset = 10, calls = 0;
    auto plain = [](int v) { return v * v; };
    auto byValue = [offset](int v) { return v + offset; };
    auto byReference = [&calls](int v) { calls++; return v; };
    auto all = [=](int v) { return offset * v; };
    auto both = [&, offset](int v) mutable { offset++; calls += offset; return v - offset; };
    SHOW(sum(plain, 5));
    offset = 100;
    SHOW(sum(byValue, 3));
    SHOW(sum(byReference, 4));
    SHOW(calls);
    SHOW(all(2));
    SHOW(both(50));
    SHOW(both(50));
    SHOW(calls);
    SHOW(offset);
    SHOW(apply([](int v) { return v - 1; }, 8));
    SHOW(sum([&](int v) -> int { if (v & 1) return offset; return 0; }, 4));
    SHOW([] { return 5; }());
    int (*pointer)(int) = plain;
    SHOW(pointer(12));
    finish();
}
