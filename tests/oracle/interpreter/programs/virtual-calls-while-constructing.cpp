#include "port.h"

struct Base {
    Base() { who(); }
    virtual ~Base() { who(); }
    virtual void who() { send('b'); }
    void call() { who(); }
};
struct Derived : Base {
    Derived() { who(); }
    ~Derived() { who(); }
    void who() override { send('d'); }
};

int main()
{
    {
        Derived derived;
        derived.call();
        send('\n');
    }
    text(" end\n");
    finish();
}
