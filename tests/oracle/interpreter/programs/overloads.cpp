#include "port.h"

static void f(int) { text("int "); }
static void f(unsigned) { text("unsigned "); }
static void f(long) { text("long "); }
static void f(unsigned long) { text("unsigned-long "); }
static void f(char) { text("char "); }
static void f(uint8_t) { text("uint8 "); }
static void f(float) { text("float "); }
static void f(const char *) { text("text "); }
static void f(const void *) { text("pointer "); }
static void f(bool) { text("bool "); }
static void g(long) { text("g-long "); }
static void g(const char *) { text("g-text "); }
static void h(int, float = 0) { text("h1 "); }
static void h(int, int) { text("h2 "); }
static void k(int &) { text("k-lvalue "); }
static void k(const int &) { text("k-const "); }

int main()
{
    uint8_t byte = 1;
    int16_t word = 2;
    int x = 3;
    f(1); f(1u); f(40000); f(70000); f(1UL); f('c'); f(byte); f(byte + byte); f(1.0f); f("s"); f(&x); f(true); f(word);
    f(x > 2); f((short)1); f(byte << 1);
    g(5); g('c'); g("t");
    h(1); h(1, 2); h(1, 2.0f);
    k(x); k(5);
    send('\n');
    finish();
}
