#include "port.h"

template <uint8_t Bits> class Fixed {
    int32_t raw;
    struct Raw {};
    constexpr Fixed(Raw, int32_t r) : raw(r) {}
public:
    constexpr Fixed(int v = 0) : raw((int32_t)v << Bits) {}
    static constexpr Fixed ratio(int a, int b) { return Fixed(Raw(), ((int32_t)a << Bits) / b); }
    Fixed operator+(Fixed o) const { return Fixed(Raw(), raw + o.raw); }
    Fixed operator*(Fixed o) const { return Fixed(Raw(), (int32_t)(((int64_t)raw * o.raw) >> Bits)); }
    Fixed &operator+=(Fixed o) { raw += o.raw; return *this; }
    int whole() const { return raw >> Bits; }
    uint16_t fraction() const { return raw & ((1UL << Bits) - 1); }
};
typedef Fixed<8> Fix;

int main()
{
    Fix scale = Fix::ratio(5, 4), sum;
    for (int i = 1; i <= 5; i++) {
        sum += scale * i;
        SHOW(sum.whole());
        SHOW(sum.fraction());
    }
    SHOW((Fix(3) * Fix::ratio(1, 3) + 1).whole());
    finish();
}
