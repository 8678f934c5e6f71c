#include "port.h"

static volatile int64_t a = 0x123456789ABCDEFLL, b = -98765432109876LL;
static volatile uint64_t c = 0xFEDCBA9876543210ULL;

int main(void)
{
    SHOW_HEX(a + b);
    SHOW_HEX(a - b);
    SHOW_HEX(c * b);
    SHOW_HEX(a % 100000 * b);
    SHOW_HEX(a / b);
    SHOW_HEX(a % b);
    SHOW_HEX(b / 7);
    SHOW_HEX(b % 7);
    SHOW_HEX(c / 10);
    SHOW_HEX(c % 10);
    SHOW_HEX(a & c);
    SHOW_HEX(a | c);
    SHOW_HEX(a ^ c);
    SHOW_HEX(~c);
    SHOW_HEX(-a);
    SHOW(a < b);
    SHOW(c > 5);
    SHOW(b < 0);
    SHOW((uint64_t)b > c);
    SHOW((int32_t)a);
    SHOW((uint8_t)c);
    SHOW(a ? 1 : 2);
    a += 5;
    b *= 2;
    c >>= 3;
    a++;
    --b;
    SHOW_HEX(a);
    SHOW_HEX(b);
    SHOW_HEX(c);
    finish();
    return 0;
}
