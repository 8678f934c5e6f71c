#include "port.h"

/* Range loops over what firmware keeps in classes: rings, views of buffers, registers, lists. */
template <typename T, uint8_t N> class Ring {
    T items[N];
    uint8_t head = 0, count = 0;
public:
    class Cursor {
        Ring *ring;
        uint8_t at;
    public:
        Cursor(Ring *r, uint8_t a) : ring(r), at(a) {}
        T &operator*() { return ring->items[(ring->head + at) % N]; }
        Cursor &operator++() { ++at; return *this; }
        bool operator!=(const Cursor &other) const { return at != other.at; }
    };
    void push(T item)
    {
        if (count == N) {
            head = (head + 1) % N;
            count--;
        }
        items[(head + count++) % N] = item;
    }
    Cursor begin() { return Cursor(this, 0); }
    Cursor end() { return Cursor(this, count); }
};

struct Sample { int8_t dx, dy; };
struct View {
    const Sample *from;
    uint8_t length;
    const Sample *begin() const { return from; }
    const Sample *end() const { return from + length; }
};
struct Node { int value; Node *next; };
struct List {
    Node *first;
    struct It {
        Node *at;
        Node *operator->() const { return at; }
        int &operator*() const { return at->value; }
        It &operator++() { at = at->next; return *this; }
    };
    It begin() { return It{ first }; }
    It end() { return It{ nullptr }; }
};
static bool operator!=(List::It a, List::It b) { return a.at != b.at; }

struct Copied {
    int v;
    Copied(int x) : v(x) {}
    Copied(const Copied &o) : v(o.v + 100) {}
};
static uint8_t calls;
static View view(const Sample *s, uint8_t n) { calls++; return { s, n }; }

static int firstNegative(const int (&values)[6])
{
    for (int v : values)
        if (v < 0)
            return v;
    return 0;
}

int main()
{
    Ring<uint8_t, 4> ring;
    for (uint8_t i = 1; i <= 6; i++)
        ring.push(i * 11);
    for (uint8_t &b : ring)
        b += 1;
    long sum = 0;
    for (auto b : ring)
        sum = sum * 100 + b % 100;
    SHOW(sum);

    static const Sample track[] = { { 1, -1 }, { 5, 7 }, { -3, 0 } };
    int x = 0, y = 0;
    for (const Sample &s : view(track, 3)) {
        x += s.dx;
        y += s.dy;
    }
    SHOW(x * 100 + y);
    SHOW(calls);

    Node c = { 3, nullptr }, b = { 2, &c }, a = { 1, &b };
    List list = { &a };
    for (int &v : list)
        v *= v;
    for (auto v : list)
        number(v);
    send('\n');

    int table[3][4] = { { 1, 2, 3, 4 }, { 5, 6, 7, 8 } };
    long total = 0;
    for (auto &row : table)
        for (auto cell : row) {
            if (cell == 6)
                continue;
            if (cell == 8)
                break;
            total = total * 10 + cell;
        }
    SHOW(total);
    SHOW(total);
    Copied things[] = { 1, 2, 3 };
    int seen = 0;
    for (Copied t : things)
        seen += t.v;
    for (Copied &t : things)
        seen += t.v;
    for (auto t : things)
        seen += t.v;
    SHOW(seen);
    const int list6[6] = { 4, 3, -2, 1, -1, 0 };
    SHOW(firstNegative(list6));
    uint16_t words[] = { 0x1234, 0xABCD };
    for (uint8_t low : words)
        hex(low, 2);
    finish();
}
