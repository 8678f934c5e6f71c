#define ITEM(name, bits) name##_##bits,
enum {
#include "include/items.h"
};
#undef ITEM
#define ITEM(name, bits) #name bits;
#include "include/items.h"
