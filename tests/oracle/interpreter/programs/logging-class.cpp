#include "port.h"
#include <stdarg.h>
#include <stdio.h>

/* A logger of its own class, with a prefix and a buffer, as drivers have. */
class Log {
    char buffer[48];
    const char *prefix;
    uint8_t lines;
public:
    explicit Log(const char *name) : prefix(name), lines(0) {}
    int printf(const char *format, ...)
    {
        va_list arguments;
        va_start(arguments, format);
        int length = vprint(format, arguments);
        va_end(arguments);
        return length;
    }
    int vprint(const char *format, va_list arguments)
    {
        int length = vsnprintf(buffer, sizeof(buffer), format, arguments);
        text(prefix);
        text(buffer);
        send('\n');
        lines++;
        return length;
    }
    static uint8_t checksum(uint8_t count, ...)
    {
        va_list bytes;
        uint8_t sum = 0;
        va_start(bytes, count);
        for (uint8_t i = 0; i < count; ++i)
            sum ^= static_cast<uint8_t>(va_arg(bytes, int));
        va_end(bytes);
        return sum;
    }
    uint8_t count() const { return lines; }
};

enum Level { ERROR, WARNING, INFO };
static Log logger("mouse: ");
static void report(Level level, const char *format, ...)
{
    if (level > WARNING)
        return;
    va_list arguments;
    va_start(arguments, format);
    logger.vprint(format, arguments);
    va_end(arguments);
}
static double mean(int count, ...)
{
    va_list list;
    double sum = 0;
    va_start(list, count);
    for (int i = 0; i < count; i++)
        sum += va_arg(list, double);
    va_end(list);
    return sum / count;
}

int main()
{
    SHOW(logger.printf("%s %d", "rate", 100));
    SHOW(logger.printf("x=%+d y=%+d buttons=%02x", -7, 12, 0x9));
    SHOW(logger.printf("%lu counts per second", 4000000UL));
    report(ERROR, "no answer after %u ms", 25u);
    report(INFO, "never seen %d", 1);
    SHOW(Log::checksum(3, 0x08, 0x05, 0xFB));
    SHOW(logger.count());
    SHOW_REAL(mean(3, 1.5f, 2.25, (double)4.0f));
    finish();
}
