#include "port.h"

union word { uint16_t word; uint8_t bytes[2]; };
union many { uint32_t whole; struct { uint16_t low, high; } halves; uint8_t bytes[4]; float real; };

int main(void)
{
    union word word;
    union many many;
    word.bytes[0] = 0x34;
    word.bytes[1] = 0x12;
    SHOW(word.word);
    many.whole = 0xDEADBEEF;
    SHOW(many.halves.high);
    SHOW(many.bytes[1]);
    many.real = 1.5f;
    SHOW_HEX(many.whole);
    many.bytes[3] |= 0x80;
    SHOW(many.real == -1.5f);
    many.halves.low++;
    SHOW_HEX(many.whole);
    finish();
    return 0;
}
