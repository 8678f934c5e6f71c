#include "port.h"

class Fixed {
    int raw;
public:
    Fixed(int whole) : raw(whole * 16) {}
    explicit Fixed(float value) : raw((int)(value * 16)) {}
    operator int() const { return raw / 16; }
    explicit operator bool() const { return raw != 0; }
    int bits() const { return raw; }
};
static int half(int v) { return v / 2; }
static int bitsOf(const Fixed &f) { return f.bits(); }

int main()
{
    Fixed a = 5, b(2.5f);
    SHOW(a);
    SHOW(b.bits());
    SHOW(half(a));
    SHOW(bitsOf(7));
    SHOW(a + b);
    if (b)
        text("true\n");
    SHOW(!Fixed(0));
    int plain = b;
    SHOW(plain);
    SHOW(static_cast<int>(Fixed(3.9f)));
    finish();
}
