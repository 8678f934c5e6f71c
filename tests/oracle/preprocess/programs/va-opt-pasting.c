// gcc only: __VA_OPT__ is newer than this avr-gcc
#define H2(X, Y, ...) __VA_OPT__(X ## Y,) __VA_ARGS__
#define H3(X, ...) #__VA_OPT__(X##X X##X)
#define H4(X, ...) __VA_OPT__(a X ## X) ## b
#define H5(X, ...) x ## __VA_OPT__(X) y
H2(a, b, c, d) H3(, 0) H3(1, 2) H4(, 1) H4(2, 3) H4(2) H5(1, 2) H5(1)
