#define x 1
#define f(x) x + y
#define y(y) y
f(2) f(x) y(3) f(y)(4)
#define g(f) f(f)
g(f)
