// gcc only: __VA_OPT__ is newer than this avr-gcc
#define call(name, ...) name(__VA_OPT__((__VA_ARGS__)))
#define list(...) __VA_OPT__([__VA_ARGS__] more)
#define inner(...) list(__VA_ARGS__) list()
call(f) call(f, 1) call(f, 1, 2) inner(1, list(2)) inner()
