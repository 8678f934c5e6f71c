#define s(...) #__VA_ARGS__
#define named(args...) #args
#define rest(x, ...) #x #__VA_ARGS__
s() s(a) s(a,b) s( a , b ) s(a,,b) s(,) named(1, 2,3) rest(1) rest(1,) rest(1,2 , 3)
