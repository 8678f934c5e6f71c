#include "port.h"

struct Guard {
    char name;
    explicit Guard(char n) : name(n) { send('('); send(name); }
    ~Guard() { send(name); send(')'); }
};
static int leave(int how)
{
    Guard a('a');
    for (int i = 0; i < 2; i++) {
        Guard b('b');
        if (how == 0)
            return 1;
        if (how == 1)
            break;
        {
            Guard c('c');
            if (how == 2)
                goto out;
            if (how == 3)
                continue;
        }
        switch (how) {
        case 4: {
            Guard d('d');
            break;
        }
        default:
            return 5;
        }
    }
    return 2;
out:
    return 3;
}

int main()
{
    for (int how = 0; how < 6; how++) {
        int result = leave(how);
        SHOW(result);
    }
    finish();
}
