#include "port.h"

struct point { int x, y; };
static int sum(const int *values, int count)
{
    int total = 0;
    while (count--)
        total += *values++;
    return total;
}
static int dot(struct point a, struct point b) { return a.x * b.x + a.y * b.y; }

int main(void)
{
    SHOW(sum((int[]){ 1, 2, 3, 4 }, 4));
    SHOW(dot((struct point){ 3, 4 }, (struct point){ .y = 2, .x = 1 }));
    struct point *p = &(struct point){ 7, 8 };
    p->x += 2;
    SHOW(p->x * p->y);
    SHOW(((const char[]){ "xyz" })[1]);
    SHOW((int){ 5 } + 1);
    finish();
    return 0;
}
