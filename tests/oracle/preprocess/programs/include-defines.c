#include "include/settings.h"
#if SPEED == 1200 && !defined(OLD)
SPEED BITS(7)
#endif
#define OLD
#include "include/settings.h"
SPEED
