#if unknown == 0 && !unknown && (unknown + 1)
zero
#endif
#if true
true in c
#else
no booleans
#endif
#define F(x) x
#if F
wrong
#else
a function macro without its call
#endif
#if sizeof
wrong
#else
keywords are names
#endif
