#include "port.h"

enum state { IDLE, START, DATA, STOP, STATES };
static enum state on_idle(uint8_t bit) { return bit ? IDLE : START; }
static uint8_t shifted, count;
static enum state on_start(uint8_t bit) { shifted = bit ? 0x80 : 0; count = 1; return DATA; }
static enum state on_data(uint8_t bit)
{
    shifted = shifted >> 1 | (bit ? 0x80 : 0);
    return ++count == 8 ? STOP : DATA;
}
static enum state on_stop(uint8_t bit)
{
    show(bit ? "byte" : "framing error", shifted);
    return IDLE;
}
static enum state (*const handlers[STATES])(uint8_t) = { on_idle, on_start, on_data, on_stop };

int main(void)
{
    static const char wire[] = "110101010101" "100000000011" "0111111110";
    enum state state = IDLE;
    for (const char *bit = wire; *bit; ++bit) {
        state = handlers[state](*bit - '0');
    }
    SHOW(state);
    finish();
    return 0;
}
