#define f(x) g(x)
#define g(x) h(f)(x)
#define h(x) x
f(1) h(f(2)) h(h(f)(3)) g(h)(4)
#define foo bar(foo)
#define bar(x) x x
foo bar(foo) bar(bar(foo))
