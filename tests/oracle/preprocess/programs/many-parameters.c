#define f(a,b,c,d,e,g,h,i,j,k,l,m,n,o,p,q) q p o n m l k j i h g e d c b a
f(1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16)
f(,,,,,,,,,,,,,,,)
