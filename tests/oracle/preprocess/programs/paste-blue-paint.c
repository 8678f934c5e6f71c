#define rec(x) rec ## x
#define rec1 rec
#define cat(a, b) a ## b
rec(1) rec(1)(2) cat(ca, t) cat(cat, )(1, 2)
