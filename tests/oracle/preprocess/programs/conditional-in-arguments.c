#define f(a, b) [a|b]
f(1,
#if 1
2
#else
3
#endif
)
#define g(x) <x>
g(before
#undef g
#define g(x) {x}
after) g(1)
