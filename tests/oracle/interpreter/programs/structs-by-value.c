#include "port.h"

struct vector { int8_t x, y; long weight; char name[4]; };
static struct vector doubled(struct vector v) { v.x *= 2; v.y *= 2; v.weight *= 2; v.name[0]++; return v; }
static struct vector make(int8_t x, int8_t y) { struct vector v = { x, y, x * 1000L + y, "abc" }; return v; }

int main(void)
{
    struct vector a = make(3, -4), b;
    b = doubled(a);
    SHOW(a.x);
    SHOW(b.x);
    SHOW(b.y);
    SHOW(b.weight);
    SHOW_TEXT(b.name);
    SHOW_TEXT(a.name);
    SHOW(doubled(doubled(a)).weight);
    SHOW(make(1, 2).name[1]);
    struct vector list[3] = { a, b };
    list[2] = list[0];
    list[0].x = 100;
    SHOW(list[2].x);
    struct vector *p = list;
    *p = p[1];
    SHOW(list[0].x);
    b = a = make(9, 9);
    SHOW(b.weight);
    finish();
    return 0;
}
