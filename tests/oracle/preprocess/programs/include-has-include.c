// gcc only: this avr-gcc takes __has_include apart as a macro
#if __has_include("include/once.h") && __has_include(<once.h>)
there
#endif
#if __has_include("nowhere.h") || __has_include(<no/where.h>)
wrong
#else
not there
#endif
#ifdef __has_include
known
#endif
#define H "include/once.h"
#if defined __has_include && __has_include(H)
by macro
#endif
