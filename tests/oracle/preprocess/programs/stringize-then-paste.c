#define s(x) #x
#define L(x) L ## #x
#define cat(a, b) a ## b
L(abc) cat(L, s(x)) cat(L, "y") cat(u8, "z") cat(L, 'c')
