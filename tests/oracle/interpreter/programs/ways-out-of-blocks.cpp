// Objects end on every way out of their block: return, break, continue, goto, the end of a turn, a label of a switch.
#include "port.h"

struct Guard {
    char name;
    Guard(char n) : name(n) { send('('); send(name); }
    ~Guard() { send(name); send(')'); }
    operator bool() const { return name != 'c'; }
};
struct Parts {
    int kind;
    Guard guard;
    Parts(int k) : kind(k), guard('p') { if (kind == 2) return; send('P'); }
    ~Parts() { if (kind == 1) return; send('p'); }
};

static int conditions(int how)
{
    Guard outer('o');
    while (Guard b = how < 3 ? 'b' : 'c') {
        if (how == 1) { how = 5; continue; }
        if (how == 2) return 1;
        break;
    }
    if (Guard z = 'z') send('!'); else send('?');
    if (Guard z = 'c') send('!'); else send('?');
    for (Guard f('f'); how < 7; how++) { Guard g('g'); if (how == 6) break; }
    return 0;
}
static int switches(int how)
{
    Guard outer('o');
    switch (how) {
    case 0: send('0'); break;
    case 1: { Guard i('i'); if (how) break; send('x'); }
    case 2: send('2');
    default:
        Guard d('d');
        if (how == 2) break;
        if (how == 3) return 3;
        for (;;) { Guard l('l'); if (how == 4) break; switch (how) { case 5: how = 4; continue; } return 4; }
        send('y');
    }
    send('e');
    return 0;
}
static int jumps(int how)
{
    int turns = 0;
    Guard outer('o');
again:
    Guard a('a');
    turns++;
    for (int i = 0; i < 2; i++) {
        Guard l('l');
        if (how == 0 && turns < 3) goto again;
        if (how == 1) goto out;
        { Guard q('q'); if (how == 2) goto next; if (how == 3) goto later; }
    next:
        send('n');
    }
    return 1;
later:
    send('L');
    how = 1;
    goto again;
out:
    send('O');
    return 2;
}
static int insideOfStatements(int how)
{
    Guard outer('o');
    switch (how) {
    case 0:
        do {
            { Guard d('d'); send('a'); if (how == 5) break; }
    case 1:
            send('b');
            Guard f('f');
            if (how == 1) return 7;
        } while (--how > 0);
        break;
    case 3:
        if (how) { Guard e('e'); break; } else { case 4: send('4'); }
    }
    return 0;
}

int main()
{
    for (int i = 1; i < 4; i++) SHOW(conditions(i));
    for (int i = 0; i < 7; i++) SHOW(switches(i));
    for (int i = 0; i < 5; i++) SHOW(jumps(i));
    for (int i = 0; i < 6; i++) SHOW(insideOfStatements(i));
    for (int i = 0; i < 3; i++) { Parts parts(i); send('\n'); }
    finish();
}
