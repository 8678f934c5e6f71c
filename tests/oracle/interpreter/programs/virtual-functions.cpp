#include "port.h"

class Shape {
public:
    virtual int area() const { return 0; }
    virtual const char *name() const = 0;
    void describe() const { show(name(), area()); }
    virtual ~Shape() {}
};
class Box : public Shape {
protected:
    int w, h;
public:
    Box(int w, int h) : w(w), h(h) {}
    int area() const override { return w * h; }
    const char *name() const override { return "box"; }
};
class Square : public Box {
public:
    Square(int side) : Box(side, side) {}
    const char *name() const final { return "square"; }
};
class Dot : public Shape {
    const char *name() const { return "dot"; }
};

int main()
{
    Box box(2, 3);
    Square square(4);
    Dot dot;
    const Shape *shapes[] = { &box, &square, &dot };
    for (int i = 0; i < 3; i++)
        shapes[i]->describe();
    Box &alias = square;
    SHOW_TEXT(alias.name());
    SHOW_TEXT(alias.Box::name());
    SHOW(sizeof(Shape));
    SHOW(sizeof(Box));
    finish();
}
