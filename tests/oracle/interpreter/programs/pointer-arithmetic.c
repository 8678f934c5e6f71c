#include "port.h"

int main(void)
{
    int values[10];
    int *p = values;
    for (int i = 0; i < 10; i++)
        *p++ = i * i;
    SHOW(p - values);
    SHOW((char *)p - (char *)values);
    SHOW(p[-1]);
    SHOW(*--p);
    SHOW(*(values + 3));
    SHOW(3[values]);
    p = &values[5];
    SHOW((*p)++);
    SHOW(++*p);
    SHOW(p > values);
    SHOW(p == &values[6]);
    const int **pp = (const int **)&p;
    SHOW(**pp);
    (*pp)++;
    SHOW(*p);
    p += 2;
    p -= 4;
    SHOW(*p);
    int (*row)[5] = (int (*)[5])values;
    SHOW(row[1][2]);
    SHOW(sizeof *row);
    long *wide = (long *)values;
    SHOW(wide[1]);
    finish();
    return 0;
}
