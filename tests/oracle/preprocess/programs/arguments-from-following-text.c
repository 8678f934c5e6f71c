#define f(a) a*g
#define g(a) f(a)
f(2)(9)
f(2)(9)(3)(4)
#define NIL(xxx) xxx
#define G_0(arg) NIL(G_1)(arg)
#define G_1(arg) NIL(arg)
G_0(42)
#define AA BB
#define BB(x) [x]
AA(1) AA (2) AA
(3)
