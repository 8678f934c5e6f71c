#include "port.h"
#include <avr/pgmspace.h>
static const char hello[] PROGMEM = "hello";
static const uint16_t rates[] PROGMEM = { 1200, 2400, 4800, 9600 };
class FlashText {
    PGM_P at;
public:
    explicit FlashText(PGM_P p) : at(p) {}
    char operator[](int i) const { return pgm_read_byte(at + i); }
    template <typename F> void each(F f) const { PGM_P p = at; while (char c = pgm_read_byte(p++)) f(c); }
};

int main()
{
    FlashText flash(hello);
    SHOW(flash[1]);
    flash.each([](char c) { send(c - 32); });
    uint32_t sum = 0;
    for (const auto &rate : rates)
        sum += pgm_read_word(&rate);
    SHOW(sum);
    finish();
}
