#include "include/guarded.h"
#include "include/guarded.h"
#include "include/once.h"
#include "include/once.h"
#include "include/unguarded.h"
#include "include/unguarded.h"
GUARDED_VALUE
