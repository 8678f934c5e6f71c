// gcc only: #elifdef is newer than this avr-gcc
#define B
#ifdef A
a
#elifdef B
b
#endif
#if 0
#elifndef C
not c
#elifdef B
late
#endif
