#include "port.h"

/* Traits and drivers chosen at compile time. */
template <typename T> struct Name { static const char *get() { return "other"; } };
template <typename T> struct Name<T *> { static const char *get() { return "pointer"; } };
template <typename T, uint8_t N> struct Name<T[N]> { static const char *get() { return N > 4 ? "long array" : "array"; } };
template <> struct Name<char *> { static const char *get() { return "text"; } };

template <typename T> struct Unqualified { typedef T type; enum { isConst = 0, isReference = 0 }; };
template <typename T> struct Unqualified<const T> { typedef T type; enum { isConst = 1, isReference = 0 }; };
template <typename T> struct Unqualified<T &> { typedef T type; enum { isConst = 0, isReference = 1 }; };

template <typename A, typename B> struct Same { static constexpr bool value = false; };
template <typename A> struct Same<A, A> { static constexpr bool value = true; };

template <bool C, typename A, typename B> struct Choose { using type = A; };
template <typename A, typename B> struct Choose<false, A, B> { using type = B; };
template <uint16_t Max> using Index = typename Choose<(Max < 256), uint8_t, uint16_t>::type;

template <uint8_t Pin, bool ActiveLow> struct Line {
    static uint8_t state;
    static void set(bool on) { state = on ? Pin : 0; }
    int level() const { return state; }
};
template <uint8_t Pin, bool ActiveLow> uint8_t Line<Pin, ActiveLow>::state;
template <uint8_t Pin> struct Line<Pin, true> {
    static uint8_t level;
    static void set(bool on) { level = on ? 0 : Pin; }
};
static uint8_t shared;

template <typename T, uint8_t N> class Ring {
    T items[N];
    uint8_t used = 0;
public:
    bool put(T v) { if (used == N) return false; items[used++] = v; return true; }
    int sum() const { int s = 0; for (uint8_t i = 0; i < used; i++) s += items[i]; return s; }
};
template <uint8_t N> class Ring<bool, N> {
    uint8_t bits[(N + 7) / 8] = {};
    uint8_t used = 0;
public:
    bool put(bool v) { if (used == N) return false; if (v) bits[used / 8] |= 1 << used % 8; used++; return true; }
    int sum() const { int s = 0; for (uint8_t b : bits) while (b) { s += b & 1; b >>= 1; } return s; }
};
template <typename T> struct Size;
template <typename T, uint8_t N> struct Size<Ring<T, N>> { static constexpr int value = N * sizeof(T); };
template <typename T> struct Size<T *> { static constexpr int value = 1000; };

template <int N> struct Factorial { static constexpr long value = N * Factorial<N - 1>::value; };
template <> struct Factorial<0> { static constexpr long value = 1; };

static void reportTwice(uint8_t) {}

int main()
{
    SHOW_TEXT(Name<long>::get());
    SHOW_TEXT(Name<int *>::get());
    SHOW_TEXT(Name<char *>::get());
    SHOW_TEXT(Name<const char *>::get());
    SHOW_TEXT(Name<int[3]>::get());
    SHOW_TEXT(Name<int[5]>::get());
    SHOW(sizeof(Unqualified<const uint8_t>::type) * 10 + Unqualified<const uint8_t>::isConst);
    SHOW(sizeof(Unqualified<long &>::type) * 10 + Unqualified<long &>::isReference);
    SHOW(Unqualified<int>::isConst + Unqualified<int *>::isReference);
    bool same[] = { Same<uint8_t, unsigned char>::value, Same<int, int16_t>::value, Same<int, long>::value, Same<char, signed char>::value };
    SHOW(same[0] * 1000 + same[1] * 100 + same[2] * 10 + same[3]);
    SHOW(sizeof(Index<100>) * 10 + sizeof(Index<300>));
    Line<4, false>::set(true);
    SHOW((Line<4, false>().level()));
    Ring<uint8_t, 3> bytes;
    Ring<bool, 12> flags;
    for (int i = 0; i < 13; i++) {
        bytes.put(i * 50);
        if (!flags.put(i % 3 == 0))
            SHOW(i);
    }
    SHOW(bytes.sum() * 10 + flags.sum());
    SHOW(sizeof(bytes) * 10 + sizeof(flags));
    SHOW((Size<Ring<int, 8>>::value) + Size<char *>::value);
    SHOW(Factorial<10>::value);
    reportTwice(shared);
    finish();
}
