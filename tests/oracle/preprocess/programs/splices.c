#def\
ine LO\
NG 1 + \
 2
LO\
NG
#define STR "a\
b"
STR ne\
xt <\
<\
= 1\
2\
.5
/\
* comment *\
/ after
/\
/ line comment
end
