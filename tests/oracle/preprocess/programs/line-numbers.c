__LINE__
#define HERE __LINE__
HERE
#define f(x) x __LINE__ x
/* a comment
   of two lines */ __LINE__
"a\
b" __LINE__
#line 100
__LINE__
#line 200 "other.c"
__LINE__ __FILE__
#define N 300
#line N
__LINE__ HERE
