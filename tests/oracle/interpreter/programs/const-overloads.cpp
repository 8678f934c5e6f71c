// Functions that differ in const alone, and references that do.
#include "port.h"

class Grid {
    int cells[4];
    mutable int reads;
public:
    Grid() : reads(0) { for (int i = 0; i < 4; i++) cells[i] = i; }
    int &at(int i) { text("write "); return cells[i]; }
    const int &at(int i) const { text("read "); reads++; return cells[i]; }
    int &operator[](int i) { text("write "); return cells[i]; }
    int operator[](int i) const { text("read "); return cells[i] + 100; }
    int *begin() { text("begin "); return cells; }
    const int *begin() const { text("const begin "); return cells; }
    int doubled(int i) const { return at(i) * 2; }
    int trebled(int i) { return at(i) * 3; }
    void count(int &n) const { n++; }
    int counted() const { count(reads); return reads; }
};
struct Base {
    virtual int value() const { return 1; }
    virtual int value() { return 2; }
};
struct Derived : Base {
    int value() const override { return 3; }
    int value() override { return 4; }
};
struct Holder { Grid grid; Grid *pointer; Grid &reference; };
template <typename T> struct Box {
    T held;
    T &get() { text("T& "); return held; }
    const T &get() const { text("const T& "); return held; }
};

static void which(int &) { text("int&\n"); }
static void which(const int &) { text("const int&\n"); }
static void which(int &&) { text("int&&\n"); }
static void which(char *) { text("char*\n"); }
static void which(const char *) { text("const char*\n"); }
static void see(const Grid &grid) { SHOW(grid.at(1)); SHOW(grid[2]); SHOW(*grid.begin()); }
static void hold(const Holder &h) { SHOW(h.grid.at(0)); SHOW(h.pointer->at(1)); SHOW(h.reference.at(2)); }

int main()
{
    Grid grid;
    const Grid &constant = grid, *pointer = &grid;
    grid.at(0) = 5;
    SHOW(grid.at(0));
    SHOW(constant.at(0));
    SHOW(pointer->at(3));
    grid[1] = 9;
    SHOW(constant[1]);
    SHOW(grid[1]);
    see(grid);
    SHOW(constant.doubled(2));
    SHOW(grid.trebled(2));
    SHOW(grid.counted());
    Holder holder = { grid, &grid, grid };
    hold(holder);
    SHOW(holder.grid.at(0));
    Derived derived;
    const Base &base = derived;
    Base &changeable = derived;
    SHOW(base.value() * 10 + changeable.value());
    Box<int> box = { 6 };
    const Box<int> sealed = { 7 };
    SHOW(box.get());
    SHOW(sealed.get());
    int x = 1;
    const int y = 2;
    which(x); which(y); which(3); which(static_cast<int &&>(x));
    char letters[2] = "a";
    which(letters); which("b");
    finish();
}
