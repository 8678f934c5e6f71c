#include "include/shadow.h"
#include <deep/shadow.h>
