#include "port.h"

struct Movement { int16_t x, y; uint8_t buttons; };
class Report {
    uint8_t bytes[4];
    uint8_t used = 0;
    Report &add(uint8_t b) { bytes[used++] = b; return *this; }
    static int8_t clip(int16_t v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
public:
    explicit Report(const Movement &m)
    {
        const int8_t x = clip(m.x), y = clip(-m.y);
        add(0x40 | (m.buttons & 1 ? 0x20 : 0) | (m.buttons & 2 ? 0x10 : 0) | ((y >> 4) & 0x0C) | ((x >> 6) & 3));
        add(x & 0x3F).add(y & 0x3F);
        if (m.buttons & 4)
            add(0x20);
    }
    template <typename Sink> void to(Sink sink) const { for (uint8_t i = 0; i < used; i++) sink(bytes[i]); }
};

int main()
{
    for (int16_t x = -200; x <= 200; x += 57) {
        Movement m{ x, (int16_t)(x / 3 - 20), (uint8_t)(x & 7) };
        Report(m).to([](uint8_t b) { hex(b, 2); });
        send('\n');
    }
    finish();
}
