#define f(x) <x>
f f; f() f (1) (f)(2) f
+f
f/* comment */(3)
f // comment
(4)
#define obj() f
obj()(5) obj() (6) obj()
