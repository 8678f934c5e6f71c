#include "port.h"

template <typename D> struct Printer {
    void print(const char *s) { while (*s) self().write(*s++); }
    void print(int v) { if (v < 0) { self().write('-'); v = -v; } if (v > 9) print(v / 10); self().write('0' + v % 10); }
private:
    D &self() { return *static_cast<D *>(this); }
};
struct Plain : Printer<Plain> { void write(char c) { send(c); } };
struct Counting : Printer<Counting> { int count = 0; void write(char c) { count++; send(c ^ 32); } };

int main()
{
    Plain plain;
    Counting counting;
    plain.print("abc");
    plain.print(-120);
    counting.print("abc");
    SHOW(counting.count);
    finish();
}
