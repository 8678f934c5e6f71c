// Functions that the compiler is told to make, constructors whose parameters all have defaults, members that start alone.
#include "port.h"

struct Trace {
    char name;
    Trace(char n = 'd', int add = 0) : name(n + add) { send('+'); send(name); }
    Trace(const Trace &o) : name(o.name) { send('c'); send(name); }
    ~Trace() { send('-'); send(name); }
};
struct Simple {
    int a = 4;
    Trace trace;
    Simple() = default;
    Simple(const Simple &) = default;
    Simple &operator=(const Simple &) = default;
    ~Simple() = default;
};
struct Zeroed { int a, b; Zeroed() = default; };
struct Unmoved { int a; Unmoved(int x) : a(x) {} Unmoved(const Unmoved &) = delete; Unmoved(Unmoved &&o) : a(o.a) { o.a = 0; } };
struct Root { virtual ~Root() = default; virtual char kind() const { return 'r'; } };
struct Leaf : Root { Trace trace{ 'l' }; char kind() const override { return 'k'; } };
struct Grid { Trace cells[2][2]; Trace last = Trace('z'); };
struct Inner { Trace trace; int n; Inner(int k = 3) : trace('i'), n(k) {} };
struct Outer { Inner first, second{ 5 }; Outer() {} Outer(int) : first(9) {} };
static Trace global, others[2];
static int calls = 0;
static int next() { return calls++; }
struct Numbered { int n; Numbered(int k = next()) : n(k) {} };

int main()
{
    send('\n');
    { Simple a, b = a; b.a = 5; a = b; SHOW(a.a); } send('\n');
    { Zeroed a = Zeroed(), b{}; SHOW(a.a + b.b); Zeroed c = { 1, 2 }; SHOW(c.a + c.b); } send('\n');
    { Unmoved a(3), b(static_cast<Unmoved &&>(a)); SHOW(a.a * 10 + b.a); } send('\n');
    { Root *r = new Leaf; send(r->kind()); delete r; } send('\n');
    { Grid g; send('\n'); } send('\n');
    { Trace a[3], b[2] = { 'x' }; send('\n'); } send('\n');
    { Outer a, b(1); SHOW(a.first.n + a.second.n + b.first.n); } send('\n');
    { Numbered a[3], b, c(20); SHOW(a[2].n * 10 + b.n + c.n); } SHOW(calls);
    SHOW(global.name + others[1].name);
    finish();
}
