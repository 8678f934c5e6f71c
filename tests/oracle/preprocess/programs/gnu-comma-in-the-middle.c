#define m(a, ...) a , ## __VA_ARGS__ , end
#define two(a, ...) f(a, ## __VA_ARGS__) g(a, ##__VA_ARGS__)
m(1) m(1, 2) m(1, 2, 3) two(1) two(1, 2)
