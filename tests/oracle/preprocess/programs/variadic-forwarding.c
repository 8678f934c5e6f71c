#define f(a, b, c) a-b-c
#define g(...) f(__VA_ARGS__)
#define h(x, ...) g(__VA_ARGS__, x)
#define count(...) nth(__VA_ARGS__, 5, 4, 3, 2, 1)
#define nth(a, b, c, d, e, n, ...) n
g(1, 2, 3) h(1, 2, 3) count(a) count(a, b) count(a, b, c, d, e)
