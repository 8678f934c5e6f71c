#if 0
it's not "terminated
#error not reached
#include "not-there.h"
#unknown directive
#define SKIPPED 1
#elif 1
#ifdef SKIPPED
wrong
#else
nothing stays
#endif
#else
isn't it?
#endif
