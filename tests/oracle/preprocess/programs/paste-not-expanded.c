#define cat(a, b) a ## b
#define xcat(a, b) cat(a, b)
#define A 1
#define B 2
#define AB whole
cat(A, B) xcat(A, B) cat(A, ) cat(, B) xcat(A, ) xcat(, )
