#include "port.h"

struct Tracked {
    int id;
    Tracked(int i) : id(i) { send('c'); }
    ~Tracked() { send('d'); id = 0; }
};
template <typename T> class Optional {
    T *held = nullptr;
public:
    ~Optional() { reset(); }
    void set(int v) { reset(); held = new T(v); }
    void reset() { delete held; held = nullptr; }
    T &operator*() { return *held; }
    T *operator->() { return held; }
    explicit operator bool() const { return held; }
};

int main()
{
    {
        Optional<Tracked> a, b;
        SHOW(!a);
        a.set(5);
        a.set(6);
        b.set(a->id + 1);
        SHOW((*a).id);
        SHOW(b->id);
        a.reset();
        SHOW(a ? 1 : 0);
    }
    send('\n');
    finish();
}
