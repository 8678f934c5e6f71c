/* The functions of support.c that C declares in string.h. */
#ifndef STRING_H
#define STRING_H
#include <stddef.h>
#ifdef __cplusplus
extern "C" {
#endif
void *memcpy(void *to, const void *from, size_t count);
void *memmove(void *to, const void *from, size_t count);
void *memset(void *to, int value, size_t count);
int memcmp(const void *left, const void *right, size_t count);
void *memchr(const void *from, int value, size_t count);
size_t strlen(const char *text);
char *strcpy(char *to, const char *from);
char *strcat(char *to, const char *from);
int strcmp(const char *left, const char *right);
#ifdef __cplusplus
}
#endif
#endif
