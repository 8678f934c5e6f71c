#include "port.h"
#include <stddef.h>
#include <stdarg.h>

/* Natural alignment, padding, bit-fields in units, packed records, 64-bit members. */
struct mixed { char c; short s; char d; int i; char e; long long w; char f; double g; char h; };
struct small { char a; short b; char c; };
struct inner { char c; struct small s; int n; };
struct bits { unsigned a : 3; unsigned b : 30; unsigned char c : 4; unsigned char d : 5; short e : 9; int : 0; int f : 7; };
struct __attribute__((packed)) packed { char c; int i; short s; long long w; };
struct part { char c; int i __attribute__((packed)); short s; };
union both { char c; double d; short s[5]; };
struct pointers { char c; void *p; int (*f)(int); char d; };
struct empty_tail { int n; char rest[3]; };
enum color { RED, GREEN = 70000, BLUE };

static long long total(int count, ...)
{
    va_list list;
    long long sum = 0;
    va_start(list, count);
    for (int i = 0; i < count; i++)
        switch (i % 4) {
        case 0: sum += va_arg(list, int); break;
        case 1: sum += va_arg(list, long long); break;
        case 2: sum += (long long)va_arg(list, double); break;
        case 3: sum += va_arg(list, struct small).b; break;
        }
    va_end(list);
    return sum;
}

static void bytes(const void *from, int count)
{
    const unsigned char *byte = from;
    while (count--)
        hex(*byte++, 2);
    send('\n');
}

int main(void)
{
    SHOW(sizeof(struct mixed));
    SHOW(offsetof(struct mixed, s) * 100 + offsetof(struct mixed, i));
    SHOW(offsetof(struct mixed, w) * 100 + offsetof(struct mixed, g));
    SHOW(sizeof(struct small) * 100 + sizeof(struct inner));
    SHOW(offsetof(struct inner, s) * 100 + offsetof(struct inner, n));
    SHOW(sizeof(struct bits));
    SHOW(sizeof(struct packed) * 100 + offsetof(struct packed, w));
    SHOW(sizeof(struct part) * 100 + offsetof(struct part, i));
    SHOW(sizeof(union both) * 100 + sizeof(struct pointers));
    SHOW(sizeof(struct empty_tail) * 100 + sizeof(enum color));
    SHOW(sizeof(int) * 1000 + sizeof(long) * 100 + sizeof(void *) * 10 + sizeof(double));
    SHOW(__alignof__(struct mixed) * 100 + __alignof__(struct packed));
    struct bits b = { 5, 0x2AAAAAAA, 9, 21, -200, 60 };
    bytes(&b, sizeof b);
    struct packed p = { 1, 0x12345678, -2, 0x1122334455667788LL };
    bytes(&p, sizeof p);
    struct inner row[3] = { { 1, { 2, 3, 4 }, 5 }, { 6, { 7, 8, 9 }, 10 } };
    SHOW((char *)&row[2] - (char *)row);
    SHOW(&row[2] - &row[0]);
    SHOW(row[1].s.b + row[2].n + row[1].n);
    struct small one = { 1, 1000, 3 };
    SHOW(total(0));
    SHOW(total(8, 1, 2LL, 3.5, one, 10, 20LL, 30.0, one));
    char c = -1;
    SHOW(c < 0);
    SHOW(40000 + 40000);
    SHOW(65535u + 1u == 65536u);
    SHOW((short)40000);
    SHOW(1 << 20);
    SHOW((unsigned short)65535 + 1);
    SHOW(-1 < 1u);
    SHOW(0x8000 > 0);
    SHOW(-7 / 2 * 10 + -7 % 2);
    unsigned u = 3;
    SHOW_HEX((unsigned long long)(u - 5));
    long long w = 1LL << 40;
    SHOW_HEX(w * 3 - 1);
    SHOW((int)(w >> 38));
    double d = 1.0 / 3;
    float f = 1.0f / 3;
    SHOW(d == f);
    SHOW((int)(d * 1e9));
    SHOW((int)((f - d) * 1e12));
    int *q = (int *)((char *)&p + 1);
    SHOW(*q == 0x12345678);
    uint32_t address = (uint32_t)&row[1] - (uint32_t)&row[0];
    SHOW(address);
    finish();
    return 0;
}
