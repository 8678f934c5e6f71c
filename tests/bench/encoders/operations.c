#include <stdint.h>

/*
 * A turn of the inner loop has 18 operations: 14 operators, two conversions by a cast, and the two operators of the
 * loop's head.
 */
uint16_t work(uint16_t rows)
{
    uint16_t a = 1;
    uint16_t b = 2;
    uint16_t c = 3;
    uint16_t row;
    for (row = 0; row < rows; row++) {
        uint16_t turn;
        for (turn = 0; turn < 256; turn++) {
            a += turn ^ row;
            b = (uint16_t)(b << 1) | (b >> 15);
            c = (uint16_t)(c + (a & b));
            b ^= c;
            a = a > c ? a - c : a + b;
        }
    }
    return (uint16_t)(a ^ b ^ c);
}
