#include "port.h"

static unsigned long factorial(unsigned n) { return n < 2 ? 1 : n * factorial(n - 1); }
static int is_odd(int n);
static int is_even(int n) { return n == 0 ? 1 : is_odd(n - 1); }
static int is_odd(int n) { return n == 0 ? 0 : is_even(n - 1); }
static int moves;
static void hanoi(int n, char from, char to, char by)
{
    if (n == 0)
        return;
    hanoi(n - 1, from, by, to);
    moves++;
    if (n > 2) { send(from); send(to); }
    hanoi(n - 1, by, to, from);
}
static int ackermann(int m, int n) { return m == 0 ? n + 1 : n == 0 ? ackermann(m - 1, 1) : ackermann(m - 1, ackermann(m, n - 1)); }

int main(void)
{
    SHOW(factorial(12));
    SHOW(is_even(20));
    SHOW(is_odd(20));
    hanoi(5, 'a', 'b', 'c');
    SHOW(moves);
    SHOW(ackermann(2, 3));
    finish();
    return 0;
}
