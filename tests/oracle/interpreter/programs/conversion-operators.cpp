// Objects that convert themselves, in arithmetic, conditions, subscripts, arguments and results.
#include "port.h"

struct Byte {
    uint8_t value;
    operator uint8_t() const { return value; }
    explicit operator bool() const { return value & 1; }
};
struct Name { const char *letters; operator const char *() const { return letters; } };
struct Degrees { long tenths; Degrees(long t) : tenths(t) {} operator long() const { send('L'); return tenths; } };
struct Counts { int n; Counts(int c) : n(c) {} };
struct Distance {
    int um;
    explicit Distance(int u) : um(u) {}
    Distance(const Counts &c) : um(c.n * 25) {}
    operator Counts() const { return Counts(um / 25); }
};
struct Register {
    volatile uint8_t *address;
    Register &operator=(uint8_t v) { *address = v; return *this; }
    operator uint8_t() const { return *address; }
};
struct Flag { bool set; operator bool() const { return set; } };

static void which(int) { text("int\n"); }
static void which(long) { text("long\n"); }
static void which(const char *) { text("text\n"); }
static void which(double) { text("double\n"); }
static int counts(const Counts &c) { return c.n; }
static int distance(Distance d) { return d.um; }
static int result(const Byte &b) { return b; }
static Counts half(const Distance &d) { return Distance(d.um / 2); }

int main()
{
    Byte b = { 6 };
    SHOW(b + 1); SHOW(1 + b); SHOW(b * b); SHOW(-b); SHOW(~b); SHOW(b > 5); SHOW(b == 6); SHOW(b << 2); SHOW(1 << b);
    if (b) text("odd\n"); else text("even\n");
    SHOW(!b); SHOW(b && true); SHOW(b ? 1 : 2); SHOW(true ? b : 3);
    int x = 10;
    x += b; SHOW(x); x = b; SHOW(x); x -= b * 2; SHOW(x);
    int table[10] = { 0, 1, 2, 3, 4, 5, 66 };
    SHOW(table[b]); SHOW(*(table + b));
    switch (b) { case 6: text("six\n"); }
    uint16_t wide = b; SHOW(wide); SHOW((long)b); SHOW(static_cast<int>(b)); SHOW(result(b));
    which(b);
    Name name = { "name" };
    which(name); SHOW_TEXT(name); SHOW(name[1]); SHOW(*name); SHOW(strlen(name)); SHOW_TEXT(name + 2);
    Degrees d = 235L;
    which(d); SHOW(d / 10); SHOW(d % 10 + d); SHOW(d > 200L); long t = d; SHOW(t);
    Distance um(1000); Counts c(8);
    SHOW(counts(um)); SHOW(distance(c)); SHOW(half(um).n); SHOW(counts(12));
    Distance made = c; SHOW(made.um); Counts back = made; SHOW(back.n); back = um; SHOW(back.n);
    uint8_t cell = 3; Register port = { &cell };
    port = port | 8; SHOW(cell); port = port + 1; SHOW(port);
    Flag on = { true }, off = { false };
    SHOW(on && !off); SHOW(on || off); SHOW(on ? 5 : 6); while (off) {} for (; off;) {} SHOW(on == off);
    finish();
}
