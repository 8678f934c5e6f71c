#include "port.h"

struct fields { unsigned int small : 4; unsigned int full : 16; unsigned long wide : 20; unsigned long long most : 40; };

int main(void)
{
    struct fields f = { 3, 40000u, 1000000UL, 0xFFFFFFFFFFULL };
    SHOW(f.small - 5 < 0);
    SHOW(f.full - 40001 < 0);
    SHOW(f.wide);
    SHOW_HEX(f.wide << 12);
    SHOW_HEX(f.most);
    SHOW_HEX(f.most + 1);
    SHOW(~f.small);
    SHOW(-f.small);
    f.most >>= 33;
    SHOW(f.most);
    finish();
    return 0;
}
