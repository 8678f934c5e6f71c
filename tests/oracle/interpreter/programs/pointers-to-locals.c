#include "port.h"

static void swap(int *a, int *b) { int kept = *a; *a = *b; *b = kept; }
static void find(const char *in, char what, const char **where)
{
    for (; *in; in++)
        if (*in == what) { *where = in; return; }
    *where = 0;
}

int main(void)
{
    int a = 1, b = 2;
    swap(&a, &b);
    SHOW(a * 10 + b);
    const char *found;
    find("hello", 'l', &found);
    SHOW_TEXT(found);
    find("hello", 'z', &found);
    SHOW(found == NULL);
    char small = 5;
    char *p = &small;
    *p += 100;
    *p += 100;
    SHOW(small);
    void *anything = &a;
    SHOW(*(int *)anything);
    int *list[3] = { &a, &b, &a };
    for (int i = 0; i < 3; i++)
        *list[i] += i + 1;
    SHOW(a);
    SHOW(b);
    finish();
    return 0;
}
