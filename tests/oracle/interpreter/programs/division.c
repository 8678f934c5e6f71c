#include "port.h"

int main(void)
{
    static const int values[] = { 7, -7, 100, -100, 1, -1 };
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) {
            SHOW(values[i] / values[j]);
            SHOW(values[i] % values[j]);
        }
    }
    volatile unsigned word = 65535u;
    volatile long wide = -2000000000L;
    volatile uint32_t most = 4000000000UL;
    volatile uint8_t byte = 250;
    volatile int8_t small = -128;
    SHOW(word / 10);
    SHOW(wide / 1000);
    SHOW(wide % 1000);
    SHOW(most / 3);
    SHOW(most % 7);
    SHOW(byte / 7 * 7 + byte % 7);
    SHOW(word / -1);
    finish();
    return 0;
}
