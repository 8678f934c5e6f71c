#include "port.h"

struct Base { int a; };
struct Derived : Base { int b; };

int main()
{
    Derived d;
    d.a = 1;
    d.b = 2;
    Base *base = &d;
    SHOW(static_cast<Derived *>(base)->b);
    SHOW(*reinterpret_cast<int *>(&d));
    SHOW(reinterpret_cast<uint8_t *>(&d)[2]);
    const int fixed[1] = { 7 };
    SHOW(*const_cast<int *>(fixed));
    SHOW(static_cast<uint8_t>(-1));
    SHOW(int(3.9f) + long(2));
    SHOW(static_cast<int8_t>(200));
    uint16_t address = reinterpret_cast<uint16_t>(&d);
    SHOW(reinterpret_cast<Derived *>(address)->b);
    SHOW(uint8_t('a' + 250));
    finish();
}
