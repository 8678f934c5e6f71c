/* The functions of support.c that C declares in stdlib.h. */
#ifndef STDLIB_H
#define STDLIB_H
#include <stddef.h>
#ifdef __cplusplus
extern "C" {
#endif
void *malloc(size_t count);
void free(void *block);
#ifdef __cplusplus
}
#endif
#endif
