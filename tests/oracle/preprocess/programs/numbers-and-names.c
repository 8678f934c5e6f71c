#define x wrong
#define E wrong
#define e5 wrong
0x1 1x 1.x .5x 1e5 1E+5 0x1p-3 1.2.3 0xE+1 1e+x 12_x x1 _x 0b101
