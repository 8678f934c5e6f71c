#define f0(x) x
#define f1(x) f0(x) f0((x))
#define f2(x) f1(x) f1(f1(x))
#define f3(x) f2(f2(x))
f3(1)
f0(f0(f0(f0(f0(f0(f0(f0(f0(f0(f0(f0(f0(f0(f0(f0(1))))))))))))))))
