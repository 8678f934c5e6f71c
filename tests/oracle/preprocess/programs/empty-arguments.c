#define none() n
#define one(x) <x>
#define two(x, y) <x|y>
none() none( ) one() one( ) two(,) two( , ) two(a,) two(,b)
#define EMPTY
one(EMPTY) two(EMPTY,EMPTY) EMPTY one EMPTY (1)
