#include "port.h"
#include <stdio.h>
#include <stdlib.h>

int main(void)
{
    char buffer[40];
    SHOW_TEXT(itoa(-1234, buffer, 10));
    SHOW_TEXT(utoa(0xBEEF, buffer, 16));
    SHOW_TEXT(ltoa(-70000L, buffer, 10));
    SHOW(atoi("  42x"));
    SHOW(strtol("-0x1F", 0, 16));
    char *end;
    SHOW(strtoul("777 rest", &end, 8));
    SHOW_TEXT(end);
    sprintf(buffer, "%d %u %x|%5d|%-5d|%05d", -5, 60000u, 0xAB, 42, 42, 42);
    SHOW_TEXT(buffer);
    sprintf(buffer, "%c%s %ld %lu %%", 'q', "word", -100000L, 4000000000UL);
    SHOW_TEXT(buffer);
    SHOW(snprintf(buffer, 5, "%s", "truncated"));
    SHOW_TEXT(buffer);
    SHOW(abs(-17));
    SHOW(labs(-170000L));
    finish();
    return 0;
}
