#define s(x) #x
s("a\n\"b\"") s('"') s('\'') s('\\') s(\) s(\n) s(L"x\y") s("\\" '\n' \n) s(u8"\0")
