/* Logging as firmware writes it: one function that formats, many that hand their arguments on. */
#include "port.h"
#include <stdarg.h>
#include <stdio.h>

typedef struct { uint8_t buttons; int8_t dx, dy; } report_t;

static char line[40];

static void put_number(long value, uint8_t base, uint8_t width)
{
    char digits[12];
    uint8_t count = 0;
    unsigned long rest = value < 0 && base == 10 ? -(unsigned long)value : (unsigned long)value;
    if (value < 0 && base == 10)
        send('-');
    do {
        uint8_t digit = rest % base;
        digits[count++] = digit < 10 ? '0' + digit : 'a' + digit - 10;
        rest /= base;
    } while (rest || count < width);
    while (count)
        send(digits[--count]);
}

/* Understands %d %u %x %l. %c %s %r. */
static int vlog(const char *format, va_list arguments)
{
    int conversions = 0;
    for (; *format; format++) {
        if (*format != '%') {
            send(*format);
            continue;
        }
        uint8_t isLong = 0;
        if (*++format == 'l') {
            isLong = 1;
            format++;
        }
        conversions++;
        switch (*format) {
        case 'd':
            put_number(isLong ? va_arg(arguments, long) : va_arg(arguments, int), 10, 0);
            break;
        case 'x':
            put_number(isLong ? va_arg(arguments, unsigned long) : va_arg(arguments, unsigned), 16, isLong ? 8 : 4);
            break;
        case 'c':
            send(va_arg(arguments, int));
            break;
        case 's':
            text(va_arg(arguments, const char *));
            break;
        case 'r': {
            report_t report = va_arg(arguments, report_t);
            put_number(report.buttons, 16, 2);
            put_number(report.dx, 10, 0);
            put_number(report.dy, 10, 0);
            break;
        }
        case 'p': {
            int *where = va_arg(arguments, int *);
            *where += 1;
            break;
        }
        default:
            send('%');
            conversions--;
        }
    }
    return conversions;
}

static int log_(const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int count = vlog(format, arguments);
    va_end(arguments);
    return count;
}

static int twice(const char *format, ...)
{
    va_list first, again;
    va_start(first, format);
    va_copy(again, first);
    int count = vlog(format, first);
    count += vlog(format, again);
    va_end(again);
    va_end(first);
    return count;
}

static int toLine(const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int length = vsnprintf(line, sizeof line, format, arguments);
    va_end(arguments);
    return length;
}

static long sumOf(uint8_t count, ...)
{
    va_list list;
    long total = 0;
    va_start(list, count);
    while (count--)
        total += va_arg(list, int);
    va_end(list);
    return total;
}

static void next(va_list *list, int *into)
{
    *into = va_arg(*list, int);
}

static int spread(int count, ...)
{
    va_list list;
    int a, b, c;
    va_start(list, count);
    next(&list, &a);
    next(&list, &b);
    c = va_arg(list, int);
    va_end(list);
    return a * 100 + b * 10 + c;
}

static uint8_t level = 2;
#define LOG(at, ...) do { if ((at) <= level) log_("[" #at "] " __VA_ARGS__); } while (0)

int main(void)
{
    int counter = 4;
    int (*logger)(const char *, ...) = log_;
    report_t report = { 9, -3, 127 };
    SHOW(log_("plain\n"));
    SHOW(log_("%d %x %c %s\n", -12, 0xBEEF, 'q', "text"));
    SHOW(log_("%ld %lx %d\n", 100000L, 0xDEADBEEFUL, 7));
    SHOW(log_("%r %d\n", report, 5));
    SHOW(logger("%p%d\n", &counter, counter));
    SHOW(counter);
    SHOW(twice("%d-%s;", 3, "x"));
    SHOW(toLine("%d,%5u,%04x,%-4s|%c", -5, 300u, 0xab, "ab", 'z'));
    SHOW_TEXT(line);
    SHOW(toLine("%ld %s", 123456789L, "a text that is longer than what the buffer can hold"));
    SHOW_TEXT(line);
    SHOW(sumOf(0));
    SHOW(sumOf(4, 1, report.dx, (uint8_t)200, 'a'));
    SHOW(sumOf(2, (int)sumOf(2, 3, 4), (int)sumOf(1, 5)));
    SHOW(spread(3, 1, 2, 3));
    LOG(1, "%d\n", 1);
    LOG(2, "%s %s\n", "a", "b");
    LOG(3, "%d\n", 3);
    finish();
    return 0;
}
