// A temporary bound to a reference with a name lasts as long as that; all others end with their expression.
#include "port.h"

struct Trace {
    char name;
    Trace(char n) : name(n) { send('+'); send(name); }
    Trace(const Trace &o) : name(o.name) { send('c'); send(name); }
    ~Trace() { send('-'); send(name); }
    const Trace &self() const { return *this; }
    char letter() const { return name; }
};
struct Derived : Trace { int n; Derived(char c) : Trace(c), n(c) {} };
struct Holder { int before; Trace trace; };

static Trace made(char n) { return Trace(n); }
static int sent(char c) { send(c); return 1; }
static void line() { send('\n'); }
static const Trace &global = Trace('G');
static const int &number3 = 3;
static const Trace &once() { static const Trace &kept = made('O'); return kept; }
static int through(const Trace &t, const int &n) { return t.name + n; }

int main()
{
    SHOW(global.name + number3);
    SHOW(once().name + once().name);
    { const Trace &a = made('a'); Trace &&b = Trace('b'); b.name = 'B'; line(); SHOW(a.name + b.name); } line();
    { const Trace &a = Derived('d'); line(); SHOW(a.name); } line();
    { const Trace &a = Holder{ 1, 'h' }.trace; line(); SHOW(a.name); } line();
    { const char &a = Trace('l').name; line(); SHOW(a); } line();
    { const Trace &a = sent('1') ? made('x') : Trace('y'); line(); SHOW(a.name); } line();
    { Trace z('z'); const Trace &a = sent('1') ? z : Trace('y'); line(); SHOW(a.name); } line();
    { Trace z('z'), &a = z, &&b = static_cast<Trace &&>(z); line(); b.name = 'Z'; SHOW(a.name); } line();
    { const Trace &a = 'i'; line(); SHOW(a.name); } line();
    { char letter = made('m').self().letter(); line(); SHOW(letter); } line();
    { const int &a = sent('1') + 1, &b = a; long c = 5; const int &d = c; line(); SHOW(a + b + d); } line();
    { auto &&a = made('r'); const auto &b = a; line(); SHOW(b.name); } line();
    for (int i = 0; i < 2; i++) { const Trace &a = Trace('0' + i); SHOW(through(a, i)); } line();
    SHOW(through('t', sent('n') + 1L));
    finish();
}
