#include "port.h"

int main(void)
{
    int i = 0, sum = 0;
    do {
        if (i == 3)
            continue;
        sum += i;
    } while (++i < 6);
    SHOW(sum);
    for (i = 10; i; i -= 2)
        if (i == 4)
            break;
    SHOW(i);
    for (uint8_t a = 0, b = 9; a < b; a++, b--)
        SHOW(a * b);
    while (i-- > 0)
        ;
    SHOW(i);
    uint8_t count = 0;
    for (uint8_t byte = 250; byte >= 250; byte++)
        count++;
    SHOW(count);
    for (;;) {
        if (++i > 5)
            break;
        if (i & 1)
            continue;
        SHOW(i);
    }
    finish();
    return 0;
}
