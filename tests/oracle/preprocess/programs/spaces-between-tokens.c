#define minus -
#define neg -x
#define plus +
a-minus-b -neg minus minus x-neg plus+ +plus <minus> x.minus.y
#define lt <
lt< lt lt <lt= /**/lt
