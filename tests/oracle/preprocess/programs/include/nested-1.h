one begins __INCLUDE_LEVEL__
#include "nested-2.h"
one ends __LINE__
