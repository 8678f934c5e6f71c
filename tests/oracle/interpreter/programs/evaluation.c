#include "port.h"

static int calls;
static int called(int value) { calls = calls * 10 + value; return value; }

int main(void)
{
    SHOW(called(0) && called(1));
    SHOW(calls);
    SHOW(called(2) || called(3));
    SHOW(calls);
    SHOW(called(0) ? called(4) : called(5));
    SHOW(calls);
    SHOW((called(6), called(7)));
    SHOW(calls);
    calls = 0;
    int i = 3;
    i = i++ ? i : -1;
    SHOW(i);
    int a, b, c;
    a = b = c = 9;
    SHOW(a + b + c);
    a += b -= c *= 2;
    SHOW(a);
    SHOW(b);
    SHOW(!a == !b);
    SHOW(a < b < c);
    SHOW(5 & 3 == 3);
    SHOW(1 + 2 << 3);
    SHOW(a > 0 ? b > 0 ? 1 : 2 : c > 0 ? 3 : 4);
    finish();
    return 0;
}
