// Arguments are made from the last to the first, and end with the full expression, the last made first.
#include "port.h"

struct Trace {
    char name;
    Trace(char n) : name(n) { send('+'); send(name); }
    Trace(const Trace &o) : name(o.name) { send('c'); send(name); }
    ~Trace() { send('-'); send(name); }
    int value() const { send('v'); send(name); return name - 'a'; }
    Trace &add(const Trace &o) { send('a'); send(o.name); return *this; }
};
struct Pair { int first, second; Pair(int f, int s) : first(f), second(s) {} };
struct Plain { int first, second; };
struct Member { Trace trace; int value; Member() : trace(Trace('m')), value(Trace('n').value()) { send('B'); } };

static int byReference(const Trace &a, const Trace &b) { send('f'); return a.name + b.name; }
static int byValue(Trace a, Trace b) { send('f'); return a.name + b.name; }
static int byDefault(const Trace &a = Trace('d'), Trace b = 'e') { return a.value() * 10 + b.value(); }
static int sent(char c) { send(c); return 1; }
static Trace made(char name) { return Trace(name); }
static Trace operator+(const Trace &a, const Trace &b) { send('o'); return Trace(a.name + b.name - 'a'); }
static void line() { send('\n'); }

int main()
{
    byReference(Trace('a'), Trace('b')); line();
    byValue('a', made('b')); line();
    SHOW(byDefault());
    SHOW(byDefault('x'));
    Trace('x').add(Trace('y')).add('z').value(); line();
    Pair parentheses(sent('1'), sent('2')); line();
    Pair braces{ sent('1'), sent('2') }; line();
    Plain plain = { Trace('a').value(), Trace('b').value() }; line();
    int values[] = { Trace('a').value(), Trace('b').value() }; line();
    (Trace('a') + Trace('b') + 'c').value(); line();
    (sent('0'), Trace('c')).value(); line();
    { Member member; line(); } line();
    Trace kept('k'); kept = Trace('K'); line();
    int element[2]; element[sent('i')] = made('r').value(); line();
    for (int i = 0; i < Trace('d').value() - 1; i += Trace('b').value()) send('.'); line();
    switch (Trace('s').value()) { case 18: send('!'); } line();
    if ((Trace('a').value() && Trace('b').value()) || Trace('c').value()) send('!'); line();
    do send('.'); while (Trace('a').value()); line();
    int n = 2; while (made('w').value() && n--) send('.'); line();
    SHOW(plain.second + values[1] + element[1] + parentheses.first + braces.second);
    finish();
}
