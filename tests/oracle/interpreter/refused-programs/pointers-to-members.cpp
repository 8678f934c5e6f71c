#include "port.h"

struct Axis {
    int x, y;
    int doubled(int v) { return v * 2 + x; }
    int tripled(int v) { return v * 3 + y; }
};

int main()
{
    Axis axis = { 5, 6 }, *p = &axis;
    int Axis::*member = &Axis::y;
    SHOW(axis.*member);
    p->*member = 60;
    SHOW(axis.y);
    int (Axis::*method)(int) = &Axis::doubled;
    SHOW((axis.*method)(10));
    method = &Axis::tripled;
    SHOW((p->*method)(10));
    finish();
}
