#define swap(a, b) b a
#define rot(a, b, c) swap(b, c) a
swap(swap(1, 2), swap(3, 4)) rot(swap(1, 2), 3, rot(4, 5, 6))
#define dup(a) swap(a, a)
dup(dup(1)) swap(rot, (1, 2, 3)) swap((1, 2, 3), rot)
