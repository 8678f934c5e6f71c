#include "port.h"

struct mixed { char a; long b; short c; long long d; float e; void *f; };

int main(void)
{
    SHOW(sizeof(char) + 10 * sizeof(short) + 100 * sizeof(int) + 1000 * sizeof(long));
    SHOW(sizeof(long long));
    SHOW(sizeof(float) * 10 + sizeof(double));
    SHOW(sizeof(void *) * 10 + sizeof(void (*)(void)));
    SHOW(sizeof(struct mixed));
    SHOW(__builtin_offsetof(struct mixed, d));
    SHOW(sizeof "text");
    SHOW(sizeof('a'));
    SHOW(sizeof(1L) * 10 + sizeof(40000));
    int array[7];
    SHOW(sizeof array / sizeof array[0]);
    int n = 1;
    SHOW(sizeof(n++));
    SHOW(n);
    SHOW(sizeof(struct { char c[3]; int i; }));
    finish();
    return 0;
}
