#include "port.h"

struct Trace {
    char name;
    Trace(char n) : name(n) { send('+'); send(name); }
    ~Trace() { send('-'); send(name); }
    int value() const { return name - 'a'; }
};
static int use(const Trace &t) { send('u'); return t.value(); }

int main()
{
    int v = use(Trace('b')) + 1;
    send('\n');
    SHOW(v);
    {
        const Trace &kept = Trace('k');
        send('|');
        SHOW(kept.value());
    }
    send('\n');
    Trace('t');
    send('\n');
    if (Trace('i').value() == 8)
        send('y');
    for (int i = 0; i < Trace('f').value() - 3; i++)
        send('0' + i);
    v = Trace('p').value(), send(',');
    send('\n');
    finish();
}
