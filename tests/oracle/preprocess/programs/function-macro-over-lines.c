#define add(a, \
            b) \
  ((a) + \
   (b))
add(1
  ,
  2) add(
#define inner 5
inner, inner
)
