/* What a 32-bit program needs that has no C library: sending is writing to standard output (i386 system calls). */
static void call(long number, long first, long second, long third)
{
    long result;
    __asm__ volatile ("int $0x80" : "=a"(result) : "a"(number), "b"(first), "c"(second), "d"(third) : "memory");
}

void send(unsigned char byte)
{
    if (byte == 4)
        call(1, 0, 0, 0);
    call(4, 1, (long)&byte, 1);
}

void *memcpy(void *to, const void *from, __SIZE_TYPE__ count)
{
    char *target = to;
    const char *source = from;
    while (count--)
        *target++ = *source++;
    return to;
}

void *memmove(void *to, const void *from, __SIZE_TYPE__ count)
{
    char *target = to;
    const char *source = from;
    if (target < source)
        return memcpy(to, from, count);
    while (count--)
        target[count] = source[count];
    return to;
}

void *memset(void *to, int value, __SIZE_TYPE__ count)
{
    char *target = to;
    while (count--)
        *target++ = value;
    return to;
}

int memcmp(const void *left, const void *right, __SIZE_TYPE__ count)
{
    const unsigned char *a = left, *b = right;
    for (; count--; a++, b++)
        if (*a != *b)
            return *a - *b;
    return 0;
}

__SIZE_TYPE__ strlen(const char *text)
{
    __SIZE_TYPE__ length = 0;
    while (text[length])
        length++;
    return length;
}

void *memchr(const void *from, int value, __SIZE_TYPE__ count)
{
    const unsigned char *byte = from;
    for (; count--; byte++)
        if (*byte == (unsigned char)value)
            return (void *)byte;
    return 0;
}

char *strcpy(char *to, const char *from)
{
    return memcpy(to, from, strlen(from) + 1);
}

char *strcat(char *to, const char *from)
{
    strcpy(to + strlen(to), from);
    return to;
}

int strcmp(const char *left, const char *right)
{
    while (*left && *left == *right)
        left++, right++;
    return (unsigned char)*left - (unsigned char)*right;
}

/* A heap that takes nothing back. */
void *malloc(__SIZE_TYPE__ count)
{
    static char heap[65536] __attribute__((aligned(8)));
    static __SIZE_TYPE__ used;
    void *block = heap + used;
    used += (count + 7) & ~7u;
    return block;
}
void free(void *block) { }
void *_Znwj(unsigned count) { return malloc(count); }
void *_Znaj(unsigned count) { return malloc(count); }
void _ZdlPv(void *block) { }
void _ZdaPv(void *block) { }
void _ZdlPvj(void *block, unsigned count) { }
void _ZdaPvj(void *block, unsigned count) { }
void *__dso_handle;
int __cxa_atexit(void (*end)(void *), void *object, void *handle) { return 0; }
void __cxa_pure_virtual(void) { call(1, 1, 0, 0); }

/* Division of 64 bits, which i386 has no instruction for. */
static unsigned long long divide(unsigned long long value, unsigned long long by, unsigned long long *rest)
{
    unsigned long long quotient = 0, left = 0;
    for (int bit = 63; bit >= 0; bit--) {
        left = left << 1 | (value >> bit & 1);
        if (left >= by) {
            left -= by;
            quotient |= 1ULL << bit;
        }
    }
    *rest = left;
    return quotient;
}
static unsigned long long magnitude(long long value) { return value < 0 ? -(unsigned long long)value : value; }
unsigned long long __udivdi3(unsigned long long value, unsigned long long by)
{
    unsigned long long rest;
    return divide(value, by, &rest);
}
unsigned long long __umoddi3(unsigned long long value, unsigned long long by)
{
    unsigned long long rest;
    divide(value, by, &rest);
    return rest;
}
long long __divdi3(long long value, long long by)
{
    unsigned long long quotient = __udivdi3(magnitude(value), magnitude(by));
    return (value < 0) != (by < 0) ? -quotient : quotient;
}
long long __moddi3(long long value, long long by)
{
    unsigned long long rest = __umoddi3(magnitude(value), magnitude(by));
    return value < 0 ? -rest : rest;
}

extern void (*__init_array_start[])(void), (*__init_array_end[])(void);
int main(void);

__attribute__((force_align_arg_pointer)) void _start(void)
{
    for (void (**each)(void) = __init_array_start; each < __init_array_end; each++)
        (*each)();
    main();
    send(4);
}
