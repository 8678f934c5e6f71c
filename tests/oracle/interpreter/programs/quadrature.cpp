#include "port.h"

class Quadrature {
    uint8_t last = 0;
    volatile int16_t position = 0;
    static const int8_t steps[16];
public:
    void sample(bool a, bool b)
    {
        uint8_t now = (a << 1) | b;
        position += steps[(last << 2) | now];
        last = now;
    }
    int16_t take() { int16_t p = position; position = 0; return p; }
};
const int8_t Quadrature::steps[16] = { 0, -1, 1, 0, 1, 0, 0, -1, -1, 0, 0, 1, 0, 1, -1, 0 };

int main()
{
    Quadrature wheel;
    const char *samples = "0231023132013201320";
    for (const char *s = samples; *s; s++)
        wheel.sample(*s & 2, *s & 1);
    SHOW(wheel.take());
    SHOW(wheel.take());
    for (const char *s = "1320132"; *s; s++)
        wheel.sample(*s & 2, *s & 1);
    SHOW(wheel.take());
    finish();
}
