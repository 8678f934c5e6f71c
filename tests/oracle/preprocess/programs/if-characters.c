#if 'a' == 97 && '\n' == 10 && '\0' == 0 && '\\' == 92 && '\'' == 39 && '"' == 34
simple
#endif
#if '\x41' == 65 && '\101' == 65 && '\7' == 7 && '\e' == 27
numbers
#endif
#if '\377' < 0 && '\xff' == -1 && '\x7f' == 127
signed characters
#endif
#if 'ab' == 24930
two
#endif
#if L'a' == 97 && u'\xffff' == 65535 && U'a' == 'a'
wide
#endif
