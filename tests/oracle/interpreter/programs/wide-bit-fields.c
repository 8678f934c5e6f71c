#include "port.h"

/* gcc's C computes with bit-fields that are wider than int in just their own width. */
struct time {
    unsigned long ticks : 24;
    unsigned long overflows : 20;
    long offset : 18;
    unsigned int small : 5;
    signed int tiny : 3;
    unsigned long long stamp : 48;
    long long drift : 36;
    unsigned long exact : 32;
    unsigned long long asLong : 32;
    unsigned int whole : 16;
};

int main(void)
{
    struct time t = { 0xFFFFF0UL, 0xFFFFFUL, -131072L, 31, -4, 0xFFFFFFFFFFF0ULL, -34359738368LL, 4000000000UL, 5, 65535u };
    SHOW_HEX(t.ticks + 0x20);
    SHOW_HEX(t.ticks << 4);
    SHOW_HEX((t.ticks << 8) >> 8);
    SHOW_HEX(t.ticks * t.ticks);
    SHOW_HEX(t.ticks * 3L);
    SHOW_HEX(t.overflows + t.ticks);
    SHOW_HEX(-t.overflows);
    SHOW_HEX(~t.overflows);
    SHOW(t.overflows > -1);
    SHOW(t.overflows > -1L);
    SHOW(t.offset < 1u);
    SHOW(t.offset < 1ul);
    SHOW(t.offset - 1 < 0);
    SHOW(t.offset * 2L);
    SHOW(t.offset >> 3);
    SHOW(t.offset / 7);
    SHOW(t.offset % 1000);
    SHOW_HEX(t.stamp + 0x20);
    SHOW_HEX(t.stamp << 12);
    SHOW_HEX(t.stamp * t.stamp);
    SHOW_HEX(t.stamp * 5LL);
    SHOW_HEX(~t.stamp);
    SHOW(t.stamp + t.drift > 0);
    SHOW_HEX(t.drift + 1);
    SHOW_HEX(t.drift / 3);
    SHOW_HEX(t.exact + 1000000000UL);
    SHOW(t.exact > -1);
    SHOW(t.asLong - 6 > 0);
    SHOW(t.whole + 1);
    SHOW(t.whole > -1);
    SHOW(t.small - 32 < 0);
    SHOW((t.small = 3) - 5 < 0);
    SHOW((0, t.small) - 5 < 0);
    SHOW((t.small += 30) - 5 < 0);
    SHOW(t.small++ - 5 < 0);
    SHOW(--t.small - 5 < 0);
    SHOW(t.tiny << 2);
    SHOW_HEX((t.overflows = 0x123456) + 0xF0000);
    SHOW_HEX(t.ticks += 0x30);
    t.ticks -= 0x40;
    SHOW_HEX(t.ticks);
    t.ticks <<= 3;
    SHOW_HEX(t.ticks);
    t.stamp >>= 33;
    SHOW_HEX(t.stamp);
    t.drift = t.drift * 2 - 1;
    SHOW_HEX(t.drift);
    SHOW_HEX(t.small ? t.ticks + 1 : t.overflows);
    SHOW((t.ticks & 0xFF) == (uint8_t)t.ticks);
    switch (t.overflows & 0xFFFF0) {
    case 0x23450: text("found\n"); break;
    default: SHOW_HEX(t.overflows);
    }
    float f = t.ticks;
    SHOW_REAL(f * t.offset);
    uint8_t index[4] = { 1, 2, 3, 4 };
    t.overflows = 2;
    SHOW(index[t.overflows] + *(index + t.overflows));
    SHOW(1 << t.overflows);
    SHOW(!t.ticks + !!t.stamp);
    finish();
    return 0;
}
