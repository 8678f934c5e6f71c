#define a x
R"(a "a" \n)" LR"z(a )" a)z" u8R"(multi
line a)" a
