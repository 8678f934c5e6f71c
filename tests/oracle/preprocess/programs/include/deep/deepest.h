deepest __INCLUDE_LEVEL__
#include "../unguarded.h"
#define NESTED seen
