#define __stringify(x) #x
#define _VECTOR(N) __vector_ ## N
#define INT0_vect _VECTOR(1)
#define ISR(vector, ...) void vector (void) __attribute__ ((signal)) __VA_ARGS__; void vector (void)
#define ALIAS(v) __attribute__((alias(__stringify(v))))
ISR(INT0_vect) { }
ISR(INT0_vect, ALIAS(INT0_vect)) { }
