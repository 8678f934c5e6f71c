#include "port.h"

static int classify(int value)
{
    int steps = 0;
again:
    if (value > 100) {
        value -= 50;
        steps++;
        goto again;
    }
    if (value < 0)
        goto negative;
    for (int i = 0; i < 5; i++) {
        for (int j = 0; j < 5; j++) {
            if (i * j == value)
                goto found;
        }
    }
    return steps * 10 + 1;
found:
    return steps * 10 + 2;
negative:
    return -1;
}

int main(void)
{
    SHOW(classify(250));
    SHOW(classify(12));
    SHOW(classify(-7));
    SHOW(classify(99));
    int i = 0;
    goto middle;
    while (i < 3) {
        send('a' + i);
    middle:
        send('A' + i);
        i++;
    }
    finish();
    return 0;
}
