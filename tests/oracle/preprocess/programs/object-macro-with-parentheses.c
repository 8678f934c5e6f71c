#define A (x) [x]
#define B(x) [x]
#define C() c
A(1) B(1) C() C ( ) C
#define D/**/(x) x
D(1)
