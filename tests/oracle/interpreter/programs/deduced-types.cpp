#include "port.h"

/* decltype, trailing returns, deduced returns, initialisers in conditions of their own. */
struct Sensor { int8_t x; uint16_t count; int8_t read() { return x; } const uint16_t &total() const { return count; } };
template <typename A, typename B> static auto add(A a, B b) -> decltype(a + b) { return a + b; }
static auto half(long v) { return v / 2; }
template <typename T> static auto doubled(T v) { return v + v; }
static auto pick(bool first) -> const char * { return first ? "first" : "second"; }
[[gnu::noinline]] static int marked [[gnu::unused]] (int v) { return v + 1; }
alignas(2) static uint8_t buffer[4];
static constexpr uint8_t mask(uint8_t bit) { return 1 << bit; }
static_assert(mask(3) == 8, "bits");
enum class Mode : uint8_t { Stream, Remote = 5 };
using Handler = decltype(&marked);

int main()
{
    Sensor s = { -5, 40000u };
    decltype(s.count) big = s.count + 30000u;
    SHOW(big);
    decltype(s.read()) small = 200;
    SHOW(small);
    decltype((s.x)) alias = s.x;
    alias = 9;
    SHOW(s.x);
    SHOW(sizeof(decltype(s.total() + 0L)));
    SHOW(add(1, 2.5) * 2);
    SHOW(add((uint8_t)200, (uint8_t)100));
    SHOW(half(100001L) + doubled((uint8_t)200));
    SHOW_TEXT(pick(false));
    const auto &ref = s.total();
    s.count++;
    SHOW(ref);
    auto *where = &s.count;
    *where += 1;
    SHOW(ref - 40000u);
    int base = 3;
    int &named = base;
    decltype(named) more = base;
    more++;
    decltype(base) copy = base;
    copy++;
    decltype(s.total()) seen = s.count;
    s.count = 5;
    SHOW(base * 100 + copy * 10 + seen);
    Handler h = marked;
    SHOW(h(4));
    decltype(Mode::Remote) m = Mode::Remote;
    SHOW(static_cast<int>(m) + mask(4));
    SHOW(sizeof(buffer) + alignof(Sensor));
    finish();
}
