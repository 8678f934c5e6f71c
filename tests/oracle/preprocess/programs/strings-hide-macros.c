#define a wrong
#define b wrong
"a" 'a' "a\"b" 'b' L"a" u8"b" u"a" U"b" L'a' "a" "b" "\\" a
