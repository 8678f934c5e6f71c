// gcc only: this avr-gcc counts the line of the closing parenthesis
#define f(x) x __LINE__ x
f(
1
) after __LINE__
