#define f(a, b) {a}{b}
f((1, 2), 3) f([1], (2, (3, 4))) f(({}), {) f(,) f((), )
#define first(a, ...) a
first((1,2),3) first(x)
