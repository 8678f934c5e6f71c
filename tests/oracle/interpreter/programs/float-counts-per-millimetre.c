#include "port.h"

static int16_t scaled(int16_t counts, float scale)
{
    float value = counts * scale;
    return value < 0 ? (int16_t)(value - 0.5f) : (int16_t)(value + 0.5f);
}

int main(void)
{
    static const float scales[] = { 0.25f, 0.5f, 1.0f, 1.27f, 2.54f };
    for (uint8_t i = 0; i < 5; i++)
        for (int16_t counts = -127; counts < 128; counts += 31)
            SHOW(scaled(counts, scales[i]));
    finish();
    return 0;
}
