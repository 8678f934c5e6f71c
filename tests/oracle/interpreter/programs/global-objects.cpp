#include "port.h"

static char order[10];
static uint8_t count;
struct Global {
    int value;
    Global(char name, int v) : value(v) { order[count++] = name; }
};
static Global first('f', 5);
Global second('s', first.value * 2);
static int computed = second.value + first.value;
struct Holder { static Global inside; };
Global Holder::inside('h', computed);

int main()
{
    SHOW_TEXT(order);
    SHOW(second.value);
    SHOW(computed);
    SHOW(Holder::inside.value);
    finish();
}
