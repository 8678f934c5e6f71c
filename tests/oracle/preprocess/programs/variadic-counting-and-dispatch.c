#define COUNT_(_1, _2, _3, _4, N, ...) N
#define COUNT(...) COUNT_(__VA_ARGS__, 4, 3, 2, 1, 0)
#define CAT_(a, b) a ## b
#define CAT(a, b) CAT_(a, b)
#define SUM1(a) (a)
#define SUM2(a, b) (a + b)
#define SUM3(a, b, c) (a + b + c)
#define SUM(...) CAT(SUM, COUNT(__VA_ARGS__))(__VA_ARGS__)
SUM(1) SUM(1, 2) SUM(1, 2, 3)
