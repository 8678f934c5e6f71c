#include "port.h"

struct Base {
    int value = 1;
    const char *f(int) { return "Base int"; }
    const char *g(int) { return "Base g int"; }
    int get() { return value; }
};
struct Derived : Base {
    int value = 2;
    using Base::g;
    const char *f(char) { return "Derived char"; }
    const char *g(char) { return "Derived g char"; }
    int both() { return value * 10 + Base::value; }
};

int main()
{
    Derived d;
    SHOW_TEXT(d.f(5));
    SHOW_TEXT(d.Base::f(5));
    SHOW_TEXT(d.g(5));
    SHOW_TEXT(d.g('c'));
    SHOW(d.both());
    SHOW(d.get());
    Base b = d;
    SHOW(b.value);
    SHOW(static_cast<Base &>(d).value);
    finish();
}
