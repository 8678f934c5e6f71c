#include "port.h"

static int next(void)
{
    static int count = 10;
    static uint8_t table[4] = { 1, 2 };
    table[count & 3]++;
    return count++ + table[0] + table[1] * 10 + table[2] * 100;
}
static int depth(int levels)
{
    static int most;
    if (levels > most)
        most = levels;
    return levels ? depth(levels - 1) : most;
}

int main(void)
{
    for (int i = 0; i < 6; i++)
        SHOW(next());
    SHOW(depth(5));
    SHOW(depth(2));
    finish();
    return 0;
}
