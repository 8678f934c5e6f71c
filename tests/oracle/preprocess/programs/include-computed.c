#define HEADER "include/once.h"
#include HEADER
#define NAME nested-2
#define ANGLED <unguarded.h>
#include ANGLED
#define PICK(x) <x.h>
#include PICK(once)
#define QUOTE(x) #x
#define FILE_OF(x) QUOTE(include/x.h)
#define ITEM(a, b) a b
#include FILE_OF(items)
