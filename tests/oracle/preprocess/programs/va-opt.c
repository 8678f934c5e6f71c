// gcc only: __VA_OPT__ is newer than this avr-gcc
#define F(...) f(0 __VA_OPT__(,) __VA_ARGS__)
#define G(X, ...) f(0, X __VA_OPT__(,) __VA_ARGS__)
#define SDEF(sname, ...) S sname __VA_OPT__(= { __VA_ARGS__ })
#define EMP
F(a, b, c) F() F(EMP) G(a, b, c) G(a, ) G(a) SDEF(foo); SDEF(bar, 1, 2);
