#define foo (4 + foo)
foo foo * foo
#define EPERM EPERM
#define loop1 loop2
#define loop2 loop3
#define loop3 loop1 + loop2
loop1; loop2; loop3; EPERM
