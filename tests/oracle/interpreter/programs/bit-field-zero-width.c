#include "port.h"

struct gap { unsigned char a : 3; unsigned char : 2; unsigned char b : 2; unsigned char : 0; unsigned char c : 1; };

int main(void)
{
    struct gap gap = { 5, 2, 1 };
    const unsigned char *bytes = (const unsigned char *)&gap;
    SHOW(sizeof gap);
    SHOW(bytes[0]);
    SHOW(bytes[1]);
    gap.a = ~gap.a;
    gap.b ^= 3;
    SHOW(bytes[0]);
    finish();
    return 0;
}
