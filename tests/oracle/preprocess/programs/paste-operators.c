#define cat(a, b) a ## b
cat(<, <) cat(<<, =) cat(-, >) cat(+, +) cat(=, =) cat(., 5) cat(1e, 5) cat(1e+, 5) cat(&, &) cat(|, =) cat(%, :)
cat(0x, ff) cat(x, 1) cat(_, _) cat(1, .) cat(1., 2)
