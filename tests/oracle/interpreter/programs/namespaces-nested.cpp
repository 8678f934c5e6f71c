#include "port.h"

/* Drivers in namespaces, versions of them inline, short names for long ones. */
namespace drivers {
    namespace ps2 {
        enum Command : uint8_t { RESET = 0xFF, ENABLE = 0xF4 };
        static uint8_t last;
        static void write(Command c) { last = c; }
        struct Packet { int8_t dx, dy; };
        int weigh(const Packet &p) { return p.dx * 2 + p.dy; }
        template <typename T> T clip(T v, T lo, T hi) { return v < lo ? lo : v > hi ? hi : v; }
        inline namespace v2 {
            constexpr uint8_t version = 2;
            struct Options { uint8_t rate = 100; bool scaling; };
            static int level(int v) { return v + version; }
        }
        namespace v1 {
            constexpr uint8_t version = 1;
            static int level(int v) { return v - version; }
        }
    }
    namespace serial { static long baud = 1200; static int bits(int n) { return n * 9; } }
}
namespace ps2 = drivers::ps2;
namespace old = ::drivers::ps2::v1;
namespace drivers { namespace serial { static int frames = 3; } static int total() { return serial::frames * serial::bits(1); } }

namespace {
    namespace inner { static int depth = 4; }
    using inner::depth;
    class Counter { int n = 0; public: int next() { return n += depth; } };
}

struct Base {
    int value = 1;
    int get() const { return value; }
    int get(int add) const { return value + add; }
    static int shared() { return 55; }
protected:
    int hidden = 9;
};
struct Derived : Base {
    int value = 2;
    using Base::get;
    using Base::hidden;
    int get(long) const { return 77; }
    int get() const { return value * 10; }
    int both() const { return Base::value * 100 + value; }
};
struct Third : Derived { int value = 3; using Derived::get; int get(char) { return value; } };

using Speed = unsigned long;
template <typename T> using Pair = T[2];
typedef int (*Step)(int);

int main()
{
    ps2::write(ps2::ENABLE);
    SHOW(ps2::last);
    SHOW(ps2::version * 10 + old::version);
    SHOW(ps2::level(5) * 100 + old::level(5));
    ps2::Options options;
    options.scaling = true;
    SHOW(options.rate + options.scaling);
    drivers::ps2::v2::Options same = options;
    SHOW(same.rate);
    ps2::Packet packet = { 5, -3 };
    SHOW(weigh(packet));
    SHOW(ps2::clip<int>(300, -127, 127));
    {
        using drivers::serial::bits;
        using namespace drivers::ps2;
        SHOW(bits(2) + level(1));
        namespace short_name = drivers::serial;
        short_name::baud /= 2;
        Command c = RESET;
        SHOW(c);
    }
    SHOW(drivers::serial::baud);
    SHOW(drivers::total());
    Counter counter;
    counter.next();
    SHOW(counter.next());

    Derived d;
    d.value = 20;
    d.Base::value = 10;
    SHOW(d.value + d.Base::value * 1000);
    SHOW(d.get() * 100 + d.Base::get());
    SHOW(d.get(3));
    SHOW(d.get(3L));
    SHOW(d.both());
    SHOW(d.hidden + Derived::shared());
    Derived *p = &d;
    p->Base::value++;
    SHOW(p->Base::value + p->Base::get(1));
    Third t;
    SHOW(t.get('x') * 100 + t.get() + t.get(5));
    SHOW(t.Base::value + t.Derived::value * 10 + t.value * 100);
    Speed speed = 4000000;
    Pair<uint8_t> pair = { 1, 2 };
    Step step = [](int v) { return v + 1; };
    SHOW(speed + pair[1] + step(1));
    finish();
}
