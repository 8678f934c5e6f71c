// Constructors that convert arguments, operands and results; explicit ones do so only where they are named.
#include "port.h"

struct Text {
    char letters[12];
    uint8_t length;
    Text(const char *s) : length(strlen(s)) { strcpy(letters, s); send('t'); }
    Text(char c) : length(1) { letters[0] = c; letters[1] = 0; send('c'); }
    explicit Text(int n) : length(n) { memset(letters, '.', n); letters[n] = 0; send('n'); }
    ~Text() { send('~'); }
    bool operator==(const Text &o) const { return strcmp(letters, o.letters) == 0; }
};
struct Fixed {
    int raw;
    Fixed(int whole, int sixteenths = 0) : raw(whole * 16 + sixteenths) {}
    friend Fixed operator+(const Fixed &a, const Fixed &b) { return raw2(a.raw + b.raw); }
    friend Fixed operator*(Fixed a, Fixed b) { return raw2((int)((long)a.raw * b.raw / 16)); }
    friend bool operator<(const Fixed &a, const Fixed &b) { return a.raw < b.raw; }
    static Fixed raw2(int r) { Fixed f(0); f.raw = r; return f; }
    Fixed &operator+=(const Fixed &o) { raw += o.raw; return *this; }
};
struct Port { int pin; bool inverted; Port(int p, bool i = false) : pin(p), inverted(i) {} };

static void show(const Text &t) { show_text("text", t.letters); }
static int length(Text t) { return t.length; }
static int pick(const Text &) { return 1; }
static int pick(long) { return 2; }
static Text answer(bool yes) { if (yes) return "yes"; return 'n'; }
static Fixed half() { return { 0, 8 }; }
static int pinOf(const Port &p) { return p.pin * 2 + p.inverted; }
static Fixed sum(const Fixed *values, uint8_t count) { Fixed s = 0; while (count--) s += *values++; return s; }

int main()
{
    show("mouse"); show('m'); show(Text(3));
    SHOW(length("four")); SHOW(length('x')); SHOW(length(Text(5)));
    SHOW(pick("a")); SHOW(pick(7)); SHOW(pick('c'));
    SHOW(Text("ab") == "ab"); SHOW(answer(true) == "yes"); SHOW(answer(false) == 'n');
    show(answer(true)); show(static_cast<Text>("cast")); show((Text)2);
    Fixed a = 3, b(1, 4), c = { 2, 8 };
    SHOW((a + b).raw); SHOW((a + 1).raw); SHOW((1 + a).raw); SHOW((c * 2).raw); SHOW(a < 4); SHOW(5 < a);
    a += 2; a += half(); SHOW(a.raw);
    Fixed list[] = { 1, { 2, 3 }, Fixed(4), half() };
    SHOW(sum(list, 4).raw);
    SHOW(pinOf(4)); SHOW(pinOf({ 5, true })); SHOW(pinOf(Port(6)));
    finish();
}
