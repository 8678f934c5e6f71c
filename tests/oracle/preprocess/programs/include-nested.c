#include "include/nested-1.h"
after __LINE__ NESTED
#include <nested-2.h>
#include "include/deep/deepest.h"
