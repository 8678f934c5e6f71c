#define P(x) _Pragma(#x) after
before _Pragma("once_upon") after
P(a time)
