#define e1 f
#define e2 e1
#define e3() e2
#define f(x) {x}
#define wrap(x) x(7)
e1(1) e2(2) e3()(3) wrap(e2) wrap(e3())
#define tail 9 f
tail(4) (tail)(5) tail tail(6)
