#define s(x) #x
#define xs(x) s(x)
#define a b c
#define e
#define call(x) x + x
s(a) xs(a) xs( a ) xs(-a) xs(a-) xs(a a) xs(call(a)) xs(call( a )) xs(e) xs(e e) xs(a e a) xs(( a )) xs(e a)
xs(call(1)call(2)) xs(call (1)) xs(call) xs(call e) xs([e]) xs([ e]) xs([e ]) xs( [ e ] )
