// Owning pointers, shared ones, rings and growing arrays as sketches write them, and what they do to their elements.
#include "port.h"

template <typename T> struct Plain { typedef T type; };
template <typename T> struct Plain<T &> { typedef T type; };
template <typename T> static typename Plain<T>::type &&moved(T &&t)
{
    return static_cast<typename Plain<T>::type &&>(t);
}
template <typename T> static T &&forwarded(typename Plain<T>::type &t) { return static_cast<T &&>(t); }
template <typename T> static void exchange(T &a, T &b) { T t(moved(a)); a = moved(b); b = moved(t); }

struct Trace {
    char name;
    Trace(char n = '0') : name(n) { send('+'); send(name); }
    Trace(const Trace &o) : name(o.name) { send('c'); send(name); }
    Trace(Trace &&o) : name(o.name) { send('m'); send(name); o.name = '_'; }
    Trace &operator=(const Trace &o) { name = o.name; send('='); send(name); return *this; }
    Trace &operator=(Trace &&o) { name = o.name; o.name = '.'; send('~'); send(name); return *this; }
    ~Trace() { send('-'); send(name); }
};
static Trace made(char n) { return Trace(n); }

template <typename T> class Owner {
    T *held;
public:
    explicit Owner(T *t = nullptr) : held(t) {}
    Owner(Owner &&o) : held(o.held) { o.held = nullptr; }
    Owner &operator=(Owner &&o)
    {
        if (this != &o) {
            delete held;
            held = o.held;
            o.held = nullptr;
        }
        return *this;
    }
    Owner(const Owner &) = delete;
    Owner &operator=(const Owner &) = delete;
    ~Owner() { delete held; }
    T *operator->() const { return held; }
    T &operator*() const { return *held; }
    explicit operator bool() const { return held; }
    T *release() { T *t = held; held = nullptr; return t; }
};
template <typename T> static Owner<T> owned(char n) { return Owner<T>(new T(n)); }
static Owner<Trace> through(Owner<Trace> o) { return o; }

template <typename T> class Shared {
    struct Block { T value; int uses; Block(char n) : value(n), uses(1) {} };
    Block *block;
public:
    Shared(char n) : block(new Block(n)) {}
    Shared(const Shared &o) : block(o.block) { block->uses++; }
    Shared &operator=(Shared o) { Block *b = block; block = o.block; o.block = b; return *this; }
    ~Shared() { if (--block->uses == 0) delete block; }
    int uses() const { return block->uses; }
    T *operator->() { return &block->value; }
};
template <typename T, int N> class Ring {
    T items[N];
    uint8_t head = 0, count = 0;
public:
    bool push(const T &t) { if (count == N) return false; items[(head + count++) % N] = t; return true; }
    bool push(T &&t) { if (count == N) return false; items[(head + count++) % N] = moved(t); return true; }
    T pop() { T t(moved(items[head])); head = (head + 1) % N; count--; return t; }
};
class List {
    Trace *items;
    uint8_t count, room;
public:
    List() : items(nullptr), count(0), room(0) {}
    List(const List &o) : items(new Trace[o.count]), count(o.count), room(o.count) { for (uint8_t i = 0; i < count; i++) items[i] = o.items[i]; }
    List(List &&o) : items(o.items), count(o.count), room(o.room) { o.items = nullptr; o.count = o.room = 0; }
    List &operator=(List o) { exchange(items, o.items); exchange(count, o.count); exchange(room, o.room); return *this; }
    ~List() { delete[] items; }
    void add(const Trace &t)
    {
        if (count == room) {
            room = room ? room * 2 : 1;
            Trace *grown = new Trace[room];
            for (uint8_t i = 0; i < count; i++)
                grown[i] = moved(items[i]);
            delete[] items;
            items = grown;
        }
        items[count++] = t;
    }
    Trace &operator[](int i) { return items[i]; }
    const Trace &operator[](int i) const { return items[i]; }
    Trace *begin() { return items; }
    Trace *end() { return items + count; }
    int size() const { return count; }
};
static List letters(const char *s) { List list; while (*s) list.add(*s++); return list; }
static int total(List list) { int sum = 0; for (Trace &t : list) sum += t.name - 'a'; return sum; }

static void kind(const Trace &) { send('c'); }
static void kind(Trace &&) { send('r'); }
template <typename T> static void forward(T &&t) { kind(forwarded<T>(t)); }
static void line() { send('\n'); }

int main()
{
    { Trace a('a'), b('b'); exchange(a, b); line(); } line();
    {
        Owner<Trace> a = owned<Trace>('o'), b = moved(a);
        SHOW(a ? 1 : 0);
        b = through(moved(b));
        send(b->name); send((*b).name);
        Trace *plain = b.release();
        delete plain;
        b = owned<Trace>('p');
        line();
    }
    line();
    { Shared<Trace> s('s'); { Shared<Trace> t = s, u('u'); u = t; SHOW(s.uses()); } SHOW(s.uses()); send(s->name); line(); } line();
    { Ring<Trace, 2> ring; Trace x('x'); ring.push(x); ring.push('y'); SHOW(ring.push(made('z'))); Trace first = ring.pop(); line(); } line();
    { List a = letters("abc"); line(); List b = a; b[0] = 'z'; SHOW(total(a)); SHOW(total(moved(b))); SHOW(b.size()); } line();
    { List a; a = letters("xy"); const List &c = a; send(c[1].name); SHOW(a.size()); } line();
    { Trace a('a'); const Trace c('c'); forward(a); forward(made('b')); forward(moved(a)); forward(c); line(); } line();
    finish();
}
