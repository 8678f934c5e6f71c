#include "port.h"

int main(void)
{
    volatile uint64_t one = 1;
    volatile int64_t negative = -0x123456789ALL;
    for (volatile uint8_t by = 0; by < 64; by += 7) {
        SHOW_HEX(one << by);
        SHOW_HEX((one << 63) >> by);
        SHOW_HEX(negative >> by);
        SHOW_HEX(0xFFFFFFFFFFFFFFFFULL >> by);
    }
    volatile uint32_t word = 0x80000001;
    SHOW_HEX((uint64_t)word << 4);
    SHOW_HEX(word << 4);
    SHOW_HEX((int64_t)(int32_t)word);
    finish();
    return 0;
}
