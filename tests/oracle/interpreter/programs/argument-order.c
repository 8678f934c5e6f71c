/* The compiler evaluates arguments from the last to the first, wherever that can be told. */
#include "port.h"

static int counter = 1;
static int next(void) { return ++counter; }
static int traced(char c) { send(c); return c - '0'; }
static int digits(int a, int b, int c) { return a * 100 + b * 10 + c; }
static int twice(int a, int b) { return a * 10 + b; }
struct operations { int (*call)(int, int, int); };
struct pair { int a, b; };
static int pairs(struct pair p, struct pair q) { return p.a * 10 + q.b; }
static struct pair made(int a) { struct pair p = { a, traced('0' + a) }; return p; }

int main(void)
{
    SHOW(digits(next(), next(), next()));
    SHOW(digits(next(), counter, 1));
    SHOW(digits(1, counter, next()));
    SHOW(digits(traced('1'), traced('2'), traced('3')));
    SHOW(twice(twice(traced('1'), traced('2')), traced('3')));
    struct operations table = { digits };
    SHOW(table.call(next(), next(), 1));
    int local = 1;
    SHOW(digits(local, local, next()));
    SHOW(pairs(made(1), made(2)));
    SHOW(traced('1') - traced('2') * traced('3'));
    char text[20];
    strncpy(text, traced('1') ? "abcdefgh" : "", traced('4'));
    text[4] = 0;
    SHOW_TEXT(text);
    finish();
    return 0;
}
