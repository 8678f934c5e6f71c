two begins __INCLUDE_LEVEL__
#include "deep/deepest.h"
two ends
