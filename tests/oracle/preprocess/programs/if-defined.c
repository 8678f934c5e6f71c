#define A
#define F(x) x
#if defined A && defined(F) && !defined B && !defined ( C )
plain
#endif
#if defined(A) + defined A + defined F == 3
counted
#endif
#define HAS defined(A)
#if HAS
from a macro
#endif
#define B A
#if defined(B) && !defined A == 0
not expanded
#endif
#undef A
#if defined A || HAS
wrong
#else
undefined
#endif
