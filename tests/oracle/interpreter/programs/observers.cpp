#include "port.h"

class Listener { public: virtual void moved(int x, int y) = 0; virtual void pressed(uint8_t) {} };
class Source {
    Listener *listeners[4];
    uint8_t count = 0;
public:
    void add(Listener &l) { listeners[count++] = &l; }
    void move(int x, int y) { for (uint8_t i = 0; i < count; i++) listeners[i]->moved(x, y); }
    void press(uint8_t b) { for (uint8_t i = 0; i < count; i++) listeners[i]->pressed(b); }
};
class Sum : public Listener { public: int x = 0, y = 0; void moved(int dx, int dy) override { x += dx; y += dy; } };
class Log : public Listener {
    const char *const name;
public:
    Log(const char *n) : name(n) {}
    void moved(int x, int) override { show(name, x); }
    void pressed(uint8_t b) override { show(name, b + 1000); }
};

int main()
{
    Source source;
    Sum sum;
    Log log("log");
    source.add(sum);
    source.add(log);
    source.move(3, 4);
    source.move(-10, 1);
    source.press(2);
    SHOW(sum.x);
    SHOW(sum.y);
    finish();
}
