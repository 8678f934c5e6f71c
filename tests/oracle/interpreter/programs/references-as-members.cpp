#include "port.h"

struct Channel { int level = 0; };
class Mixer {
    Channel &left, &right;
    const int &scale;
public:
    Mixer(Channel &l, Channel &r, const int &s) : left(l), right(r), scale(s) {}
    void set(int v) { left.level = v * scale; right.level = -v * scale; }
    Channel &louder() { return left.level > right.level ? left : right; }
};

int main()
{
    Channel a, b;
    int scale = 2;
    Mixer mixer(a, b, scale);
    mixer.set(10);
    SHOW(a.level);
    scale = 3;
    mixer.set(-10);
    SHOW(b.level);
    mixer.louder().level++;
    SHOW(b.level);
    finish();
}
