#include "port.h"

static void copy(char *to, const char *from, int count)
{
    int rounds = (count + 7) / 8;
    switch (count % 8) {
    case 0: do { *to++ = *from++;
    case 7: *to++ = *from++;
    case 6: *to++ = *from++;
    case 5: *to++ = *from++;
    case 4: *to++ = *from++;
    case 3: *to++ = *from++;
    case 2: *to++ = *from++;
    case 1: *to++ = *from++;
            } while (--rounds > 0);
    }
}

int main(void)
{
    char buffer[40];
    for (int count = 1; count < 27; count += 5) {
        memset(buffer, 0, sizeof buffer);
        copy(buffer, "abcdefghijklmnopqrstuvwxyz", count);
        SHOW_TEXT(buffer);
    }
    finish();
    return 0;
}
