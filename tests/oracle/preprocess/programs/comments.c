a/**/b a/* x */b /* multi
line */ c // end
d // continued \
still comment
e "/* not a comment */" "//" // "
/ * not * / /**/ /***/ /*/*/ /* * / */ f
g//*
h
