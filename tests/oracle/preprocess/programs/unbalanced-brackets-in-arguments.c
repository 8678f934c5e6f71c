#define f(x) <x>
f([) f({) f(]) f(}) f([(,)])
