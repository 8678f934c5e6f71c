#include "port.h"

template <typename T, uint8_t Size> class Ring {
    T items[Size];
    uint8_t head = 0, used = 0;
public:
    bool push(const T &item)
    {
        if (used == Size)
            return false;
        items[(head + used++) % Size] = item;
        return true;
    }
    T pop()
    {
        T item = items[head];
        head = (head + 1) % Size;
        used--;
        return item;
    }
    uint8_t size() const { return used; }
    static constexpr uint8_t capacity() { return Size; }
};
template <typename A, typename B = A> struct Pair { A first; B second; A sum() const { return first + second; } };
template <typename T> struct Name { static const char *get() { return "?"; } };
template <> struct Name<int> { static const char *get() { return "int"; } };

int main()
{
    Ring<int, 4> ints;
    for (int i = 0; i < 6; i++)
        SHOW(ints.push(i * 1000));
    SHOW(ints.pop() + ints.pop());
    SHOW(ints.push(77));
    SHOW(ints.size());
    SHOW((Ring<long, 9>::capacity()));
    Pair<int> same = { 1, 2 };
    Pair<long, char> mixed = { 100000L, 'a' };
    SHOW(same.sum());
    SHOW(mixed.sum());
    SHOW(sizeof mixed);
    SHOW_TEXT(Name<long>::get());
    SHOW_TEXT(Name<int>::get());
    Ring<Pair<int>, 2> pairs;
    pairs.push(same);
    SHOW(pairs.pop().second);
    finish();
}
