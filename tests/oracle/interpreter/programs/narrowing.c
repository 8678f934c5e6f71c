#include "port.h"

int main(void)
{
    volatile long wide = 0x12345678L;
    int8_t a = wide;
    uint8_t b = wide;
    int16_t c = wide;
    uint16_t d = wide >> 4;
    SHOW(a);
    SHOW(b);
    SHOW(c);
    SHOW(d);
    a = 127;
    a++;
    SHOW(a);
    b = 0;
    b--;
    SHOW(b);
    c = 32766;
    c += 1;
    SHOW(c);
    d = 65535u;
    SHOW(d++);
    SHOW(d);
    b = 250;
    b += 10;
    b *= 3;
    b -= 20;
    b <<= 1;
    b /= 3;
    SHOW(b);
    SHOW(b = 300);
    SHOW(a = b + 100);
    _Bool truth = 256;
    SHOW(truth);
    truth = 0.5f;
    SHOW(truth);
    truth--;
    SHOW(truth);
    finish();
    return 0;
}
