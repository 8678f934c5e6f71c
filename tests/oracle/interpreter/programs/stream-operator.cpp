#include "port.h"

class Out {
public:
    Out &operator<<(const char *s) { text(s); return *this; }
    Out &operator<<(char c) { send(c); return *this; }
    Out &operator<<(int v) { number(v); return *this; }
    Out &operator<<(long v) { number(v); send('L'); return *this; }
    Out &operator<<(bool b) { return *this << (b ? "yes" : "no"); }
};
struct Point { int x, y; };
static Out &operator<<(Out &out, const Point &p) { return out << '(' << p.x << ';' << p.y << ')'; }
static Out out;

int main()
{
    out << "x=" << 5 << ' ' << -70000L << '\n';
    Point p = { 3, -4 };
    out << p << " is " << (p.x < p.y) << '\n';
    uint8_t byte = 200;
    out << (byte << 1) << '\n';
    finish();
}
