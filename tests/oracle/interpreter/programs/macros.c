#include "port.h"

#define COMMANDS(X) X(RESET, 0xFF) X(RESEND, 0xFE) X(ENABLE, 0xF4)
#define AS_ENUM(name, value) CMD_##name = value,
#define AS_CASE(name, value) case value: return #name;
#define MAX(a, b) ((a) > (b) ? (a) : (b))
#define CLAMP(v, lo, hi) ({ __typeof__(v) v_ = (v); v_ < (lo) ? (lo) : v_ > (hi) ? (hi) : v_; })
#define BIT(n) (1U << (n))
enum command { COMMANDS(AS_ENUM) };
static const char *name(uint8_t command)
{
    switch (command) {
        COMMANDS(AS_CASE)
    }
    return "?";
}

int main(void)
{
    SHOW_TEXT(name(CMD_RESEND));
    SHOW_TEXT(name(0xF4));
    SHOW_TEXT(name(1));
    int i = 4;
    SHOW(MAX(i++, 3));
    SHOW(CLAMP(i * 100, -127, 127));
    SHOW(CLAMP(i, 0, 127));
    SHOW(BIT(3) | BIT(15));
    SHOW(__LINE__);
    finish();
    return 0;
}
