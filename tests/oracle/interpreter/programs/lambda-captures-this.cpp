#include "port.h"

class Meter {
    int total = 0, scale;
    template <typename F> void each(F f) { for (int i = 1; i <= 3; i++) f(i); }
public:
    Meter(int s) : scale(s) {}
    int run()
    {
        each([this](int i) { total += i * scale; });
        each([&](int i) { this->total += i; });
        return total;
    }
};

int main()
{
    Meter meter(10);
    SHOW(meter.run());
    SHOW(meter.run());
    auto make = [](int by) { return [by](int v) { return v * by; }; };
    auto triple = make(3);
    SHOW(triple(14));
    SHOW(make(2)(triple(5)));
    finish();
}
