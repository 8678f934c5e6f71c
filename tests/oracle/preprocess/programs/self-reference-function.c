#define f(x) x + f(x)
#define g(x) f(g(x))
f(1) f(f(1)) g(2) g(f(g(3)))
f
(4)
