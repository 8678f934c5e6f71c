#define x (4 + y)
#define y (2 * x)
x y
#define a(n) b(n) a
#define b(n) a(n) b
a(1)(2)(3)
b(1)(2)(3)
