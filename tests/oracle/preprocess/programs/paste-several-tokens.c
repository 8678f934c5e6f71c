#define join(a, b) a ## b
join(1 2, 3 4) join(x y, z) join(+ x, y +)
#define outer(a, b, c) a ## b c a b ## c
outer(1, 2, 3) outer(x, , z) outer(, y, )
