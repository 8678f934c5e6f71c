#include "port.h"

static void increment(int &value) { value++; }
static void swap(int &a, int &b) { int kept = a; a = b; b = kept; }
static int &larger(int &a, int &b) { return a > b ? a : b; }
static int twice(const int &value) { return value * 2; }
struct Pair { int a, b; int &pick(bool second) { return second ? b : a; } };
static int table[3];
static int &at(int i) { return table[i]; }

int main()
{
    int x = 1, y = 5;
    int &alias = x;
    alias = 3;
    increment(alias);
    SHOW(x);
    swap(x, y);
    SHOW(x * 10 + y);
    larger(x, y) = 0;
    SHOW(x);
    SHOW(twice(y + 1));
    Pair pair = { 7, 8 };
    pair.pick(true) += 10;
    SHOW(pair.b);
    at(2) = 9;
    ++at(2);
    SHOW(table[2]);
    int *p = &alias;
    SHOW(p == &x);
    const long &wide = x;
    x = 77;
    SHOW(wide);
    int (&array)[3] = table;
    SHOW(array[2]);
    (x > y ? x : y) = 1;
    SHOW(x);
    finish();
}
