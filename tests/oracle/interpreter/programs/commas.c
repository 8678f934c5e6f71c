#include "port.h"

#define set(port, bits) (port |= (bits), lines |= 1)
#define clear(port, bits) (port &= (uint8_t)~(bits), lines |= 2)
#define swap(a, b) (a ^= b, b ^= a, a ^= b)

static uint8_t port = 0x5A, lines;
static int calls;
static int called(int value) { calls = calls * 10 + value; return value; }

static int last(int value)
{
    int kept;
    return (kept = value + 1, calls += kept, kept * 2);
}

int main(void)
{
    int a = 700, b = 9, i, j;
    int row[3] = {4, 5, 6}, *at = row;
    struct { uint8_t low; int high; } pair = {250, 3}, *held = &pair;

    set(port, 1 << 2);
    SHOW(port);
    clear(port, 1 << 4 | 1 << 1);
    SHOW(port);
    SHOW(lines);
    if (port)
        clear(port, 0xF0);
    else
        set(port, 0xF0);
    SHOW(port);
    swap(a, b);
    SHOW(a);
    SHOW(b);

    (a = 3, b = 4);
    (a += 20, b -= 30);
    (a *= 7, b *= 3);
    (a /= 2, b %= 10);
    SHOW(a);
    SHOW(b);
    (a <<= 3, b |= 0x40);
    (a >>= 1, b ^= 0x11, a &= 0xFF);
    SHOW(a);
    SHOW(b);

    (a = called(1), b = called(2), called(3));
    SHOW(calls);
    ((a = b, b += 5), (i = a, j = b));
    SHOW(i * 100 + j);
    (a = b = 6, i = j = a + 1);
    SHOW(a + b + i + j);
    (a = b > 3 ? 8 : 9, b = a);
    SHOW(b);
    (*at++ = 40, *at = 50);
    (row[2] = 60, at++);
    SHOW(row[0] + row[1] * 2 + row[2] * 3);
    (held->low += 10, pair.high = -1);
    SHOW(pair.low * 100 + pair.high);

    calls = 0;
    for ((i = 0, j = 10); (a = i * i, a < j); (i += 1, j -= 1))
        called(i);
    SHOW(i * 100 + j);
    SHOW(calls);
    i = 0;
    while ((i += 2, i < 7))
        j += i;
    SHOW(j);
    do
        j -= 3;
    while (i -= 1, i > 3);
    SHOW(j);
    do
        j += 2;
    while ((i += 1, i < 7));
    SHOW(j);
    switch (a = 2, a + 1) {
    case 3:
        SHOW(a);
    }
    if ((a = 0, b = 5) && (b -= 5, !b))
        SHOW(b);
    SHOW((a = 5, a * 3));
    SHOW(last(20) + (b = 2, b));
    i = (a = 4, b = a + 1) - 1;
    SHOW(i);
    j = a ? (a = 7, b = 1) : (a = 8, b = 2);
    SHOW(a * 10 + j);
    SHOW(sizeof(a = 99, pair.low));
    SHOW(a);
    SHOW(row[(i = 1, i + 1)]);
    finish();
    return 0;
}
