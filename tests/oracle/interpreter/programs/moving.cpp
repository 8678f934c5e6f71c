#include "port.h"

struct Handle {
    int id;
    explicit Handle(int i) : id(i) {}
    Handle(Handle &&o) : id(o.id) { o.id = -1; }
    Handle &operator=(Handle &&o) { id = o.id; o.id = -2; return *this; }
    Handle(const Handle &) = delete;
    ~Handle() { number(id); send(' '); }
};
static int take(Handle &&h) { return h.id; }
static const char *which(int &) { return "lvalue"; }
static const char *which(int &&) { return "rvalue"; }

int main()
{
    {
        Handle a(1), b(static_cast<Handle &&>(a)), c(3);
        SHOW(a.id);
        c = static_cast<Handle &&>(b);
        SHOW(b.id);
        SHOW(c.id);
        SHOW(take(Handle(9)));
    }
    int x = 1;
    SHOW_TEXT(which(x));
    SHOW_TEXT(which(x + 1));
    finish();
}
