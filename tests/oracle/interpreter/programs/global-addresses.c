#include "port.h"

static int cells[4] = { 10, 20, 30, 40 };
static int *const second = &cells[1];
static int *last = cells + 3;
static const char *const greeting = "hello" + 1;
struct link { struct link *next; int value; };
static struct link b, a = { &b, 1 }, b = { &a, 2 };
static int *pointers[] = { cells, &cells[2], 0 };
static unsigned char *bytes = (unsigned char *)cells + 2;

int main(void)
{
    SHOW(*second);
    SHOW(*last--);
    SHOW(*last);
    SHOW_TEXT(greeting);
    SHOW(a.next->value);
    SHOW(a.next->next->value);
    SHOW(**pointers);
    SHOW(*pointers[1]);
    SHOW(pointers[2] == 0);
    SHOW(*bytes);
    SHOW(second - cells);
    finish();
    return 0;
}
