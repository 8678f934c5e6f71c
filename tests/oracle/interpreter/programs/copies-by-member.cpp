// Copies, moves and assignments that the compiler makes: bases, members and elements, each in its own way.
#include "port.h"

struct Trace {
    char name;
    Trace(char n = '0') : name(n) { send('+'); send(name); }
    Trace(const Trace &o) : name(o.name) { send('c'); send(name); }
    Trace(Trace &&o) : name(o.name) { send('m'); send(name); o.name = '_'; }
    Trace &operator=(const Trace &o) { name = o.name; send('='); send(name); return *this; }
    Trace &operator=(Trace &&o) { name = o.name; o.name = '.'; send('~'); send(name); return *this; }
    ~Trace() { send('-'); send(name); }
};
struct Holder { int before; Trace trace; int after; };
struct Arrays { Trace pair[2]; uint8_t bytes[3]; unsigned low : 4; unsigned high : 12; };
struct Base { Trace base; int a; Base(char n) : base(n), a(n) {} };
struct Derived : Base { Trace own; Derived(char n) : Base(n), own(n + 1) {} };
struct WithEnd { Trace trace; WithEnd(char n) : trace(n) {} ~WithEnd() { send('E'); } };
struct OnlyCopies { Trace trace; OnlyCopies(char n) : trace(n) {} OnlyCopies(const OnlyCopies &) = default; };
struct Virtual { Trace trace; Virtual(char n) : trace(n) {} virtual char kind() const { return 'V'; } };
struct Special : Virtual { Special(char n) : Virtual(n) {} char kind() const override { return 'S'; } };
struct Outer { struct { Trace a; int b; } inner; Trace *pointer; };

template <typename T> static T &&given(T &t) { return static_cast<T &&>(t); }
static void line() { send('\n'); }

int main()
{
    { Holder a = { 1, 'a', 2 }, b = a, c = given(a); line(); b = c; b = given(c); SHOW(b.after + b.before); } line();
    { Arrays a = { { 'a', 'b' }, { 1, 2, 3 }, 9, 1234 }, b = a, c = given(b); line(); c = a; a = given(c); SHOW(a.high + a.bytes[2] + a.low); } line();
    { Derived a('a'), b = a, c(given(a)); line(); b = c; c = given(b); SHOW(c.a); } line();
    { Base a('x'); Derived d('d'); Base b = d; a = d; b = given(d); line(); } line();
    { WithEnd a('a'), b = a, c = given(a); b = given(c); line(); } line();
    { OnlyCopies a('a'), b = a, c = given(a); b = c; line(); } line();
    { Special s('s'); Virtual v = s; const Virtual &r = s; v = s; send(v.kind()); send(r.kind()); Virtual w(r); send(w.kind()); Special t('t'); Virtual &q = t; q = v; send(q.kind()); line(); } line();
    { Trace shared('p'); Outer a = { { 'i', 3 }, &shared }, b = a; a.inner.a.name = 'j'; b = a; line(); SHOW(b.inner.b); } line();
    { Holder list[2] = { { 1, 'a', 2 }, { 3, 'b', 4 } }; list[0] = list[1]; line(); SHOW(list[0].before); } line();
    finish();
}
