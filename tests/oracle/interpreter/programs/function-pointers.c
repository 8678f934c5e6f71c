#include "port.h"

typedef int (*operation)(int, int);
static int add(int a, int b) { return a + b; }
static int subtract(int a, int b) { return a - b; }
static int apply(operation with, int a, int b) { return with(a, b); }
static operation choose(char symbol) { return symbol == '+' ? add : subtract; }
static void (*hook)(uint8_t) = send;
static const operation table[] = { add, subtract, 0 };

int main(void)
{
    int (*again)(operation, int, int) = &apply;
    SHOW(apply(add, 3, 4));
    SHOW(again(choose('-'), 3, 4));
    SHOW((*choose('+'))(10, 20));
    for (const operation *each = table; *each; each++) {
        SHOW((*each)(100, 58));
    }
    SHOW(table[0] == add);
    SHOW(choose('-') == add);
    hook('!');
    SHOW(hook != 0);
    finish();
    return 0;
}
