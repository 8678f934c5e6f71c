#include "port.h"

static volatile float numbers[] = { 0.5f, 1.5f, -1.5f, 2.99f, 100.7f, -100.7f, 32000.9f, 1234567.0f };

int main(void)
{
    for (uint8_t i = 0; i < 8; i++) {
        SHOW((int32_t)numbers[i]);
        SHOW((int16_t)(int32_t)numbers[i]);
        SHOW((uint8_t)(int32_t)numbers[i]);
        SHOW(numbers[i] ? 1 : 0);
        SHOW(!numbers[i]);
    }
    volatile int32_t large = 16777217L;
    volatile uint32_t most = 4294967295UL;
    volatile int8_t small = -7;
    SHOW_REAL((float)large);
    SHOW_REAL((float)most);
    SHOW_REAL(small);
    SHOW_REAL(small / 2);
    SHOW_REAL(small / 2.0f);
    float sum = 0;
    for (int i = 0; i < 10; i++)
        sum += 0.1f;
    SHOW_REAL(sum);
    sum++;
    sum -= 1.5;
    SHOW_REAL(sum);
    SHOW_REAL(-sum);
    finish();
    return 0;
}
