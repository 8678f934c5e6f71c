#include "port.h"

int main(void)
{
    uint8_t a[8] = { 1, 2, 3, 4, 5, 6, 7, 8 }, b[8];
    memcpy(b, a, sizeof a);
    SHOW(memcmp(a, b, 8));
    memmove(a + 2, a, 5);
    for (int i = 0; i < 8; i++)
        SHOW(a[i]);
    memset(b, 0x5A, 3);
    SHOW(memcmp(a, b, 8) < 0);
    SHOW((uint8_t *)memchr(b, 4, 8) - b);
    struct { int x; char c; } s = { 3, 'c' }, t;
    memcpy(&t, &s, sizeof s);
    SHOW(t.x + t.c);
    memset(&t, 0xFF, sizeof t);
    SHOW(t.x);
    finish();
    return 0;
}
