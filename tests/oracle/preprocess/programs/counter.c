#define UNIQUE_(a, b) a ## b
#define UNIQUE(a, b) UNIQUE_(a, b)
#define NEW UNIQUE(v, __COUNTER__)
NEW NEW __COUNTER__ NEW
#if __COUNTER__ == 4
in a condition
#endif
#define twice(x) x x
twice(__COUNTER__)
