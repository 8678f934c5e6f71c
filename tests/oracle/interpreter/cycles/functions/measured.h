/* What every file of measured functions begins with. */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <stdbool.h>
#include <stdint.h>

/*
 * Compiled as a whole function, whoever calls it. The comment before it says with what it is called: numbers, or
 * names of global arrays, in parentheses, each call with the state that the one before left.
 */
#ifdef __cplusplus
#define MEASURED extern "C" __attribute__((noinline, noclone))
#else
#define MEASURED __attribute__((noinline, noclone))
#endif
