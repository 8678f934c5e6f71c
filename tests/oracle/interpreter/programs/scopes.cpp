#include "port.h"

static int x = 1;
struct Scope { int x; Scope(int x) : x(x + ::x) {} int outer() { int x = 50; return x + this->x + ::x; } };

int main()
{
    SHOW(x);
    int x = 2;
    {
        int x = 3;
        x++;
        SHOW(x);
    }
    SHOW(x + ::x);
    for (int x = 0; x < 2; x++) {
        int y = x;
        SHOW(y + x);
    }
    if (int x = 7)
        SHOW(x);
    while (int left = x--) {
        SHOW(left);
        if (left < 0)
            break;
    }
    SHOW(Scope(10).outer());
    finish();
}
