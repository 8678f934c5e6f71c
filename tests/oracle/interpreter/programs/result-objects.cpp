// Results are made where they are wanted; what cannot be is moved, or else copied.
#include "port.h"

struct Trace {
    char name;
    Trace(char n) : name(n) { send('+'); send(name); }
    Trace(const Trace &o) : name(o.name) { send('c'); send(name); }
    Trace(Trace &&o) : name(o.name) { send('m'); send(name); o.name = '_'; }
    Trace &operator=(const Trace &o) { name = o.name; send('='); send(name); return *this; }
    Trace &operator=(Trace &&o) { name = o.name; o.name = '.'; send('~'); send(name); return *this; }
    ~Trace() { send('-'); send(name); }
};
struct Derived : Trace {
    Derived(char n) : Trace(n) {}
    Derived(char n, int) : Trace(made(n)) {}
    static Trace made(char n) { return n; }
};
static Trace global('G');

static Trace made(char n) { return Trace(n); }
static Trace converted(char n) { return n; }
static Trace named(char n) { Trace t(n); t.name++; return t; }
static Trace constant(char n) { const Trace t(n); return t; }
static Trace alwaysTheSame(char n) { Trace t(n); if (n == 'a') return t; t.name = 'z'; return t; }
static Trace oneOfTwo(char n) { if (n == 'a') { Trace t(n); return t; } Trace u(n); return u; }
static Trace namedOrNot(char n) { if (n == 'a') return Trace('q'); Trace u(n); return u; }
static Trace inner(char n) { { Trace t(n); return t; } }
static Trace inParentheses(char n) { Trace t(n); return (t); }
static Trace moved(char n) { Trace t(n); return static_cast<Trace &&>(t); }
static Trace parameter(Trace t) { return t; }
static Trace ofGlobal() { return global; }
static Trace ofReference(const Trace &t) { return t; }
static Trace base(char n) { Derived d(n); return d; }
static Trace either(bool first) { Trace x('x'), y('y'); return first ? x : y; }
static Trace eitherNew(bool first) { Trace x('x'); return first ? x : made('y'); }
static Trace assigned(Trace &a) { return a = Trace('s'); }
static Trace nested(char n) { return parameter(named(n)); }
static void line() { send('\n'); }

int main()
{
    { Trace t = made('a'); line(); } line();
    { Trace t(converted('b')); line(); } line();
    { Trace t{ made('c') }, u = { made('d') }; line(); } line();
    { Trace t = named('e'); line(); } line();
    { Trace t = constant('f'); line(); } line();
    { Trace t = alwaysTheSame('a'), u = alwaysTheSame('b'); line(); } line();
    { Trace t = oneOfTwo('a'), u = oneOfTwo('b'); line(); } line();
    { Trace t = namedOrNot('a'), u = namedOrNot('b'); line(); } line();
    { Trace t = inner('g'); line(); } line();
    { Trace t = inParentheses('h'); line(); } line();
    { Trace t = moved('i'); line(); } line();
    { Trace t('j'), u = parameter(t), v = parameter(made('k')); line(); } line();
    { Trace t = ofGlobal(), u = ofReference(t), v = ofReference(made('l')); line(); } line();
    { Trace t = base('n'); line(); } line();
    { Derived d('o', 1); Trace t = d, u = static_cast<Derived &&>(d), v = Derived('p'); line(); } line();
    { Trace t = either(true), u = either(false); line(); } line();
    { Trace t = eitherNew(true), u = eitherNew(false); line(); } line();
    { Trace t('r'), u = assigned(t); line(); } line();
    { Trace t = nested('t'); line(); } line();
    { Trace *t = new Trace(made('u')), *u = new Trace(Trace('v')); line(); delete t; delete u; } line();
    { Trace t('w'); t = made('x'); t = 'y'; t = named('z'); line(); } line();
    { auto t = made('A'); auto u = t; auto &&v = made('B'); line(); } line();
    made('C'); line();
    finish();
}
