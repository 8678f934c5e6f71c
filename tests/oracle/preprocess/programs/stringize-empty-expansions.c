// gcc only
#define s(...) #__VA_ARGS__
#define xs(...) s(__VA_ARGS__)
#define nothing
#define in(p) (p)
#define behind(p, q) p q
#define ends(p) [ p
#define before(p) - p)
xs(in(x nothing)) xs(in(x)) xs(in(nothing)) xs(in( nothing)) xs(in(nothing nothing)) xs((x nothing))
xs(in(x nothing nothing)) xs(in(x-nothing)) xs(in(nothing x)) xs(in( x )) xs((nothing)) xs(( nothing))
xs([behind(x nothing,)]) xs([behind(,x nothing)]) xs([behind(,nothing)]) xs([behind(,)]) xs([behind(nothing,)])
xs((ends()-x)) xs((ends(nothing)-x)) xs((ends(nothing nothing)-x)) xs((before(nothing))) xs((before(x nothing)))
xs(ends(s) (x)) xs(in(s) (x)) xs(ends(nothing)s nothing) xs(in(in nothing)) xs(in(in nothing)(x))
xs(in(s nothing) -) xs(ends(in nothing) -) xs(ends(nothing)x,ends()y) xs(in(x nothing),nothing y,nothing)
