#include "port.h"
#include <stdarg.h>
static long total(int count, ...)
{
    va_list list;
    long sum = 0;
    va_start(list, count);
    for (int i = 0; i < count; i++)
        sum += i % 2 ? va_arg(list, long) : va_arg(list, int);
    va_end(list);
    return sum;
}

int main(void)
{
    char byte = -3;
    SHOW(total(0));
    SHOW(total(1, 5));
    SHOW(total(4, 5, 100000L, byte, -7L));
    finish();
    return 0;
}
