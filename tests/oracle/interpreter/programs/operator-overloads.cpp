#include "port.h"

struct Vec {
    int x, y;
    Vec(int x = 0, int y = 0) : x(x), y(y) {}
    Vec operator+(const Vec &o) const { return Vec(x + o.x, y + o.y); }
    Vec operator-() const { return Vec(-x, -y); }
    Vec &operator+=(const Vec &o) { x += o.x; y += o.y; return *this; }
    bool operator==(const Vec &o) const { return x == o.x && y == o.y; }
    bool operator!=(const Vec &o) const { return !(*this == o); }
    int &operator[](int i) { return i ? y : x; }
    int operator()(int k) const { return x * k + y; }
    Vec &operator++() { ++x; ++y; return *this; }
    Vec operator++(int) { Vec old = *this; ++*this; return old; }
    bool operator!() const { return x == 0 && y == 0; }
};
static Vec operator-(const Vec &a, const Vec &b) { return Vec(a.x - b.x, a.y - b.y); }
static Vec operator*(int k, const Vec &v) { return Vec(k * v.x, k * v.y); }
static bool operator<(const Vec &a, const Vec &b) { return a.x < b.x; }
static void put(const char *name, const Vec &v) { text(name); number(v.x); send(','); number(v.y); send('\n'); }

int main()
{
    Vec a(1, 2), b(3, 5);
    put("sum ", a + b);
    put("difference ", a - b);
    put("scaled ", 3 * a + -b);
    a += b;
    a[1] = 50;
    put("a ", a);
    SHOW(a(10));
    put("post ", a++);
    put("pre ", ++a);
    SHOW(a == b);
    SHOW(a != b);
    SHOW(b < a);
    SHOW(!Vec());
    a = b = Vec(9, 9);
    put("assigned ", a);
    put("from int ", a + 5);
    finish();
}
