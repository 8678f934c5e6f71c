#include "port.h"

/* Functions that take any number of arguments, each of its own type. */
static void put(int v) { number(v); }
static void put(long v) { number(v); send('L'); }
static void put(const char *s) { text(s); }
static void put(char c) { send(c); }
static void put(bool b) { send(b ? 'y' : 'n'); }

static void print() { send('\n'); }
template <typename T, typename... Rest> static void print(T first, Rest... rest)
{
    put(first);
    if (sizeof...(rest) > 0)
        send(' ');
    print(rest...);
}
template <typename... Ts> static int total(Ts... values)
{
    int list[] = { 0, static_cast<int>(values)... };
    int sum = 0;
    for (int v : list)
        sum += v;
    return sum * 10 + sizeof...(Ts);
}
template <typename... Ts> static void each(Ts... values)
{
    int order[] = { (put(values), 0)... };
    (void)order;
    send('\n');
}
template <typename F, typename... A> static auto call(F f, A... arguments) -> int { return f(arguments...); }
template <typename T> static T largest(T v) { return v; }
template <typename T, typename... Ts> static T largest(T first, Ts... others)
{
    T rest = largest(others...);
    return first > rest ? first : rest;
}
template <typename... Ts> static uint8_t checksum(uint8_t seed, const Ts &... bytes)
{
    uint8_t all[sizeof...(bytes)] = { (uint8_t)bytes... };
    for (uint8_t b : all)
        seed ^= b;
    return seed;
}
template <typename... Ts> static void bump(Ts &... counters) { int d[] = { ++counters... }; (void)d; }
static int weigh(int a, int b, int c) { return a * 100 + b * 10 + c; }
template <int N> static int triangle() { return N + triangle<N - 1>(); }
template <> int triangle<0>() { return 0; }
struct Frame { uint8_t a, b, c; };
template <typename... Ts> static Frame frame(Ts... values) { return Frame{ (uint8_t)values... }; }

int main()
{
    print();
    print(1);
    print("dx", 5, 'c', 70000L, true);
    SHOW(total());
    SHOW(total(1, 2L, (char)3));
    each('a', 2, "three", false);
    SHOW(call(weigh, 1, 2, 3));
    int base = 1000;
    SHOW(call([base](int a, int b) { return base + a * b; }, 6, 7));
    SHOW(largest(3, 9, 4));
    SHOW(largest(5L));
    SHOW(checksum(0x80, 0x08, 5, 'A'));
    int a = 1;
    long b = 41;
    uint8_t c = 255;
    bump(a, b, c);
    SHOW(a + b + c);
    SHOW(triangle<10>());
    Frame f = frame(1, 2L, 'c');
    SHOW(f.a * 100 + f.b * 10 + f.c);
    finish();
}
