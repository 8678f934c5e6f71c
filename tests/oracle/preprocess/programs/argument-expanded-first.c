#define id(x) x
#define twice(x) x x
#define comma ,
#define pair(x) two(x)
#define two(a, ...) [a|__VA_ARGS__]
id(id)(1) id(id(id))(2) twice(id(id(3))) pair(1 comma 2) two(1 comma 2)
