#define cat(a, b) a ## b
#define foobar expanded
#define fun(x) [x]
#define foofun fun
cat(foo, bar) cat(f, un)(1) cat(foo, fun)(2) cat(c, at)(foo, bar) cat(ca, t)
