#include "port.h"

template <typename T> static T clamp(T v, T low, T high) { return v < low ? low : v > high ? high : v; }
template <typename T> static void swap(T &a, T &b) { T kept = a; a = b; b = kept; }
template <typename T, unsigned N> static unsigned count(T (&)[N]) { return N; }
template <typename To, typename From> static To bits(From from) { To to; memcpy(&to, &from, sizeof to); return to; }
template <int N> static int times(int v) { return v * N; }
template <typename T> static const char *kind(T) { return "other"; }
template <> const char *kind<int>(int) { return "int"; }
static const char *kind(char) { return "char"; }
template <typename T> static T total(const T *values, int n) { T sum = T(); while (n--) sum += *values++; return sum; }

int main()
{
    SHOW(clamp(300, -127, 127));
    SHOW(clamp<int8_t>(-100, -50, 50));
    SHOW(clamp(2.5f, 0.0f, 1.5f) == 1.5f);
    long a = 1, b = 100000;
    swap(a, b);
    SHOW(a);
    uint8_t bytes[] = { 100, 100, 100 };
    SHOW(count(bytes));
    SHOW_HEX(bits<uint32_t>(1.0f));
    SHOW(times<7>(6));
    SHOW_TEXT(kind(1));
    SHOW_TEXT(kind('c'));
    SHOW_TEXT(kind(1L));
    SHOW(total(bytes, 3));
    long longs[] = { 100000, 200000 };
    SHOW(total(longs, 2));
    finish();
}
