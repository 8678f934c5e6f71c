/** Declarations that the C++ expressions refer to. */
export const cppPrelude = `
typedef unsigned char byte_t;
enum class mode : unsigned char { stream = 0xEA, remote = 0xF0 };
enum level { LOW, HIGH = 1, FLOATING };
enum shifted { SHIFT_A = 1, SHIFT_B = 1 << 15 };
constexpr unsigned long clock_hz = 16000000UL;
constexpr unsigned baud = 1200;
const int rate = 40;
static const unsigned char commands[] = { 0xFF, 0xF3, 0xC8, 0xF4 };
constexpr long scale[2][2] = { { 1, 2 }, { 3, -4 } };
constexpr unsigned divisor(unsigned long hz, unsigned long bits) { return (hz + 8 * bits) / (16 * bits) - 1; }
constexpr int factorial(int n) { return n <= 1 ? 1 : n * factorial(n - 1); }
constexpr unsigned char parity(unsigned char value) {
  unsigned char ones = 0;
  for (unsigned char bit = 0; bit < 8; ++bit) { if (value & (1 << bit)) ones++; }
  return (ones & 1) == 0;
}
constexpr int sum_to(int n) { int total = 0; while (n > 0) { total += n; n--; } return total; }
constexpr int grade(int value) {
  switch (value) { case 0: return 10; case 1: case 2: return 20; default: break; }
  return -1;
}
template <class T> constexpr T larger(T a, T b) { return a > b ? a : b; }
template <class T, unsigned N> constexpr unsigned length(const T (&)[N]) { return N; }
template <unsigned N> struct Buffer { static constexpr unsigned capacity = N * 2; unsigned char bytes[N]; };
namespace wire { constexpr int pin = 7; namespace inner { constexpr long wait = 100; } }
struct limits { static const int low = -255; static constexpr int high = 255; enum { span = high - low }; };
struct empty {};
struct derived : limits { int value; };
struct pair { signed char x; int y; };
constexpr pair origin = { -3, 300 };
enum class reg : unsigned char { A = 0x10, B, C = B << 1 };
constexpr unsigned char operator|(reg a, reg b) { return (unsigned char)a | (unsigned char)b; }
template <int N> struct product { enum { value = N * product<N - 1>::value }; };
template <> struct product<0> { enum { value = 1 }; };
template <class T, class U = long> struct two { T first; U second; };
template <> struct two<char> { char only; };
struct port { int speed; virtual void send(int b); virtual ~port(); };
struct usart : port { char number; void send(int b) override; };
struct plain_base { char a; };
struct joined : plain_base, empty { long b; };
struct only_derived : empty {};
struct with_static { static int shared; char own; void method(); };
constexpr int wait_for(const int &ticks, int scale = 3) { return ticks * scale; }
constexpr long mixed_sum(long a, unsigned char b) { long t = a; t += b; t <<= 1; t ^= 0xF0; return t; }
constexpr int collatz(unsigned n) { int steps = 0; do { n = n % 2 ? 3 * n + 1 : n / 2; ++steps; } while (n != 1); return steps; }
constexpr int early(int n) { for (int i = 0; i < 100; i++) { if (i == 3) continue; if (i * i > n) return i; } return -1; }
struct bits { unsigned char a : 3; unsigned char b : 5; };
constexpr bits both = { 5, 17 };
struct nested { struct { signed char x, y; } at[2]; const char *name; };
constexpr nested places[] = { { { { 1, 2 }, { 3, -4 } }, "M" }, { { { 5 } } } };
`;

/** C++ constant expressions, by class; value and type are compared with avr-g++. */
export const cppExpressions: Readonly<Record<string, readonly string[]>> = {
  constants: [
    "clock_hz",
    "baud",
    "rate",
    "rate * 1000",
    "clock_hz / 16 / baud - 1",
    "clock_hz / (16UL * baud) - 1",
    "commands[0]",
    "commands[3]",
    "commands[1] << 8",
    "scale[1][0]",
    "scale[1][1]",
    "sizeof(commands)",
    "sizeof commands / sizeof *commands",
    "wire::pin",
    "wire::inner::wait",
    "limits::low",
    "limits::high",
    "limits::span",
    "limits::high - limits::low",
    "origin.x",
    "origin.y",
    "rate > 30",
  ],
  functions: [
    "divisor(clock_hz, baud)",
    "divisor(8000000, 1200)",
    "divisor(16000000, 9600)",
    "factorial(5)",
    "factorial(7)",
    "parity(0xF4)",
    "parity(0x00)",
    "parity(0xFF)",
    "parity(1)",
    "sum_to(100)",
    "sum_to(0)",
    "grade(0)",
    "grade(2)",
    "grade(9)",
    "wait_for(7)",
    "wait_for(7, 2)",
    "mixed_sum(1000, 200)",
    "mixed_sum(30, 7)",
    "collatz(27)",
    "early(50)",
    "early(30000)",
    "larger(3, 5)",
    "larger('a', 'b')",
    "larger(3L, 5L)",
    "larger<long>(3, 5)",
    "larger<unsigned>(1, -1)",
    "length(commands)",
    "length(scale)",
  ],
  classes: [
    "sizeof(limits)",
    "sizeof(empty)",
    "sizeof(derived)",
    "sizeof(pair)",
    "sizeof(Buffer<4>)",
    "Buffer<4>::capacity",
    "Buffer<8>::capacity",
    "product<5>::value + 0",
    "product<7>::value + 0",
    "sizeof(two<int>)",
    "sizeof(two<char>)",
    "sizeof(two<char, char>)",
    "sizeof(port)",
    "sizeof(usart)",
    "sizeof(joined)",
    "sizeof(only_derived)",
    "sizeof(with_static)",
    "both.a + 0",
    "both.b + 0",
    "places[0].at[1].y",
    "places[1].at[0].x",
    "places[1].at[1].y",
    "sizeof(places)",
    "sizeof(bits)",
    "sizeof(mode)",
    "sizeof(level)",
    "sizeof(shifted)",
  ],
  casts: [
    "static_cast<unsigned char>(832)",
    "byte_t(300)",
    "int(3.7)",
    "static_cast<int>(mode::remote)",
    "(int)mode::stream",
    "(int)reg::C",
    "reg::A | reg::B",
    "static_cast<unsigned>(reg::B) << 8",
    "unsigned(-1)",
    "static_cast<long>(40000u)",
    "bool(5)",
    "int(true)",
    "static_cast<signed char>(200)",
    "char(65)",
    "long{5}",
    "int{}",
  ],
  types: [
    "true",
    "false",
    "!5",
    "1 < 2",
    "1 && 2",
    "true + true",
    "'a'",
    "'a' + 1",
    "sizeof('a')",
    "sizeof(true)",
    "1 == 1L",
    "LOW + 1",
    "HIGH | FLOATING",
    "-HIGH",
    "SHIFT_B + 0",
    "~LOW",
    "HIGH << 3",
    "LOW < HIGH",
    "HIGH * 2u",
    "HIGH + 1L",
    "true ? 1 : 2L",
    "true ? 'a' : 'b'",
    "true ? HIGH : LOW",
    "(1, 2L)",
    "1'000'000",
    "0b1111'0100",
    "nullptr == nullptr",
    "sizeof(nullptr)",
    "alignof(long)",
    "u'a'",
    "U'a'",
    "L'a'",
  ],
};
