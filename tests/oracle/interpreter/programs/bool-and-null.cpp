#include "port.h"

static const char *kind(bool) { return "bool"; }
static const char *kind(int) { return "int"; }
static const char *kind(const char *) { return "text"; }
static bool flag(int v) { return v; }

int main()
{
    bool b = 5;
    SHOW(b);
    SHOW(b + true);
    SHOW(flag(256));
    SHOW(flag(0));
    b = !b;
    b |= 4;
    SHOW(b);
    SHOW_TEXT(kind(b));
    SHOW_TEXT(kind(!b));
    SHOW_TEXT(kind(b + b));
    SHOW_TEXT(kind(nullptr));
    SHOW_TEXT(kind(1 > 0 && 'a'));
    int *p = nullptr, x = 0;
    SHOW(p == nullptr);
    p = &x;
    SHOW(!p);
    SHOW(p ? 1 : 2);
    bool values[3] = { 1, 0, 2 };
    SHOW(values[0] + values[1] + values[2]);
    finish();
}
