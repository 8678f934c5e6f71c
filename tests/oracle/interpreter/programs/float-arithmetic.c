#include "port.h"

static float values[] = { 0.0f, 1.0f, -2.5f, 3.14159f, 1e10f, -1e-10f, 16777216.0f };

int main(void)
{
    for (uint8_t i = 0; i < 7; i++) {
        for (uint8_t j = 0; j < 7; j++) {
            real(values[i] + values[j]);
            send(' ');
            real(values[i] * values[j]);
            send(' ');
            real(values[i] - values[j]);
            send(values[i] < values[j] ? '<' : values[i] > values[j] ? '>' : '=');
        }
        send('\n');
    }
    SHOW_REAL(values[3] / values[2]);
    SHOW_REAL(1.0f / 3);
    SHOW_REAL(0.1f + 0.2f);
    double wide = 0.1;
    SHOW(sizeof wide);
    SHOW(wide == 0.1f);
    SHOW_REAL(wide * 3);
    finish();
    return 0;
}
