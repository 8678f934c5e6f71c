#include "port.h"

class Id {
    static int next;
    const int mine;
public:
    static const uint8_t limit = 9;
    static char tag;
    Id() : mine(next++) {}
    int get() const { return mine; }
    static int upcoming() { return next; }
    static void restart(int from) { next = from; }
};
int Id::next = 1;
char Id::tag = 't';

int main()
{
    Id a, b;
    SHOW(a.get() * 10 + b.get());
    Id::restart(100);
    Id c;
    SHOW(c.get());
    SHOW(Id::upcoming());
    SHOW(c.upcoming());
    SHOW(Id::limit);
    Id::tag++;
    SHOW(a.tag);
    finish();
}
