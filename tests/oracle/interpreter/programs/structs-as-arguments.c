#include "port.h"
#include <stdarg.h>

/* A callee's changes of what it was given by value never reach the caller's objects. */
typedef struct { int x, y; } point_t;
typedef union { uint32_t word; uint8_t bytes[4]; } word_t;

static int spoil(point_t p) { int s = p.x * 10 + p.y; p.x = p.y = 99; return s; }
static uint8_t last(word_t w) { w.bytes[3]++; return w.bytes[3]; }
static point_t make(int x) { point_t p = { x, x + 1 }; return p; }
static int both(point_t a, point_t b) { a.x += b.y; b.x = 0; return a.x * 100 + b.y; }
static int several(int count, ...)
{
    va_list list;
    int sum = 0;
    va_start(list, count);
    while (count--)
        sum = sum * 3 + spoil(va_arg(list, point_t));
    va_end(list);
    return sum;
}

int main(void)
{
    point_t a = { 1, 2 }, b = { 3, 4 }, row[2] = { { 5, 6 }, { 7, 8 } };
    word_t w = { 0x01020304 }, v;
    SHOW(spoil(a = b));
    SHOW(a.x + a.y);
    SHOW(spoil(a.x > 2 ? row[0] : b));
    SHOW(row[0].x);
    SHOW(spoil((b.x++, row[1])));
    SHOW(row[1].x + b.x);
    SHOW(last(v = w));
    SHOW(last(v) + v.bytes[3]);
    SHOW(spoil(make(4)));
    SHOW(spoil((point_t){ 6, 7 }));
    SHOW(both(a, a));
    SHOW(a.x);
    SHOW(several(3, a, row[0], make(1)));
    SHOW(make(8).y + (a = make(2)).x);
    finish();
    return 0;
}
