#define e(fmt, ...) p(fmt, ##__VA_ARGS__)
#define n(fmt, args...) p(fmt, ##args)
#define only(...) p(x, ##__VA_ARGS__)
#define none(...) p(x, __VA_ARGS__)
#define EMPTY
#define A first, second
e("x") e("x",) e("x", a) e("x", a, b) e("x", EMPTY) e("x", A) n("y") n("y", 1, 2) n(A) only() only(1) only(EMPTY) none() none(1)
