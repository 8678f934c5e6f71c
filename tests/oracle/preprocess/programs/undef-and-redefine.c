#define A 1
A
#undef A
A
#define A(x) [x]
A A(2)
#undef A
#undef NEVER
#define A A(3)
A
