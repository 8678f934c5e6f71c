#include "port.h"

/* What lambdas hold is theirs: copies have states of their own, references share. */
template <typename F> static int calls(F f, int n) { int last = 0; while (n--) last = f(); return last; }
template <typename F> static int callsOf(const F &f, int v) { return f(v); }
template <typename F> static int count(F f) { static int times = 0; f(); return ++times; }

struct Point { int x, y; int sum() const { return x + y; } };

template <typename F> struct Handler {
    F call;
    uint8_t id;
    Handler(F f, uint8_t i) : call(f), id(i) {}
    int run(int v) { return call(v) + id; }
};
template <typename F> static Handler<F> handler(F f, uint8_t id) { return Handler<F>(f, id); }

class Filter {
    int weight;
    int state = 0;
public:
    explicit Filter(int w) : weight(w) {}
    int feed(const int *values, uint8_t n)
    {
        auto step = [this](int v) { state += (v - state) * weight / 16; return state; };
        for (uint8_t i = 0; i < n; i++)
            step(values[i]);
        auto read = [=] { return state * 10 + weight; };
        auto deeper = [&] { return [&](int add) { state += add; return n; }; };
        SHOW(deeper()(7));
        return read();
    }
};

static auto adder(int by) { return [by](int v) { return v + by; }; }
static auto twice = [](int v) { return v * 2; };
static int (*const table[])(int) = { [](int v) { return v + 1; }, [](int v) { return v - 1; }, twice };

int main()
{
    int n = 5;
    auto counter = [n]() mutable { return n++; };
    auto other = counter;
    SHOW(counter());
    SHOW(counter());
    SHOW(other());
    SHOW(calls(counter, 3));
    SHOW(counter());
    SHOW(n);

    const int limit = 127;
    auto clip = [](int v) { return v > limit ? limit : v < -limit ? -limit : v; };
    SHOW(clip(300) + clip(-5) + clip(-999));
    int (*plain)(int) = clip;
    SHOW(plain(130));

    uint8_t bytes[4] = { 1, 2, 3, 4 };
    Point p = { 3, 4 };
    auto holds = [bytes, p](uint8_t i) { return bytes[i] * 100 + p.sum(); };
    bytes[2] = 9;
    p.x = 50;
    SHOW(holds(2));
    SHOW(sizeof holds);
    auto sees = [&bytes, &p](uint8_t i) { p.y++; return bytes[i] * 100 + p.sum(); };
    SHOW(sees(2));
    SHOW(sees(2));
    SHOW(sizeof(sees));
    SHOW(sizeof(clip));

    int &alias = n;
    auto byCopy = [alias] { return alias; };
    auto byName = [&alias] { return ++alias; };
    n = 70;
    SHOW(byCopy());
    SHOW(byName());
    SHOW(n);

    auto renamed = [width = n * 2, &total = p.x](int v) { total += v; return width + v; };
    SHOW(renamed(1));
    SHOW(p.x);

    int seen = 0;
    auto nested = [&seen, n](int v) {
        auto inner = [&, v](int w) { seen += v * w; return n; };
        return inner(2) + inner(3);
    };
    SHOW(nested(10));
    SHOW(seen);

    for (uint8_t i = 0; i < 3; i++) {
        auto local = [=](int v) { return v * 10 + i; };
        SHOW(callsOf(local, i + 1));
    }

    SHOW(count([] {}));
    SHOW(count([] {}));
    auto same = [] {};
    SHOW(count(same) + count(same));

    auto made = handler([&](int v) { return v + n; }, 3);
    n = 1000;
    SHOW(made.run(2));
    SHOW(adder(3)(4));
    auto five = adder(5);
    SHOW(five(five(1)));
    for (auto *f : table)
        SHOW(f(40));
    SHOW((true ? +[](int v) { return v; } : nullptr)(6));

    const int values[] = { 160, 160, 320 };
    Filter filter(8);
    SHOW(filter.feed(values, 3));
    auto choose = [](bool first) -> const char * { if (first) return "first"; return "second"; };
    SHOW_TEXT(choose(n > 5));
    auto factorial = [](int v) { int r = 1; while (v > 1) r *= v--; return r; };
    SHOW(factorial(7));
    auto keeps = [] { static int kept = 3; return kept++; };
    keeps();
    SHOW(keeps());
    finish();
}
