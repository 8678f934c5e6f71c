#include "port.h"

class Counter {
public:
    Counter(int start) : value(start) {}
    void up() { ++value; }
    void up(int by) { value += by; }
    int get() const { return value; }
    Counter &twice() { value *= 2; return *this; }
private:
    int value;
};

int main()
{
    Counter a(3), b = 10;
    a.up();
    a.up(5);
    b.twice().twice().up();
    SHOW(a.get());
    SHOW(b.get());
    Counter *p = &a;
    p->up();
    (*p).twice();
    SHOW(p->get());
    SHOW(sizeof(Counter));
    finish();
}
