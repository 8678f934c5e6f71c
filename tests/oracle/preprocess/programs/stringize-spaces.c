#define s(x) #x
s(  a   b  ) s(a/**/b) s(a /**/ b) s(a
b) s() s( ) s("a  b") s('a  b') s( + + ) s(++) s(a . b)
