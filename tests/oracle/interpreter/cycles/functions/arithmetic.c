#include "measured.h"

/* calls: (200, 100) */
MEASURED uint8_t add8(uint8_t a, uint8_t b)
{
    return a + b;
}

/* calls: (2000, -100) (5, 9) */
MEASURED int16_t difference16(int16_t a, int16_t b)
{
    return a > b ? a - b : b - a;
}

/* calls: (200000, 100) */
MEASURED uint32_t mixed32(uint32_t a, uint32_t b)
{
    return (a + b) ^ (a >> 8);
}

/* calls: (20, 10) */
MEASURED uint16_t product8(uint8_t a, uint8_t b)
{
    return a * b;
}

/* calls: (2000, 31) */
MEASURED uint16_t product16(uint16_t a, uint16_t b)
{
    return a * b;
}

/* calls: (70000, 3100) */
MEASURED uint32_t product32(uint32_t a, uint32_t b)
{
    return a * b;
}

/* calls: (200, 7) (9, 200) */
MEASURED uint8_t quotient8(uint8_t a, uint8_t b)
{
    return a / b;
}

/* calls: (20000, 70) (9, 200) */
MEASURED uint16_t quotient16(uint16_t a, uint16_t b)
{
    return a / b;
}

/* calls: (-20000, 70) (9, 200) */
MEASURED int16_t remainder16(int16_t a, int16_t b)
{
    return a % b;
}

/* calls: (2000000, 700) (9, 200) */
MEASURED uint32_t quotient32(uint32_t a, uint32_t b)
{
    return a / b;
}

/* calls: (1234) (7) */
MEASURED uint16_t by_ten(uint16_t a)
{
    return a / 10;
}

/* calls: (0x1234) */
MEASURED uint8_t nibbles(uint16_t a)
{
    return ((a >> 4) & 0x0f) | ((a >> 8) & 0xf0);
}

/* calls: (0xa7) */
MEASURED uint8_t swapped(uint8_t a)
{
    return (a << 4) | (a >> 4);
}

/* calls: (1, 3) (0xff, 0) (0x55, 7) */
MEASURED uint8_t shifted8(uint8_t a, uint8_t by)
{
    return a << by;
}

/* calls: (1000, 3) (0xffff, 12) */
MEASURED uint16_t shifted16(uint16_t a, uint8_t by)
{
    return a >> by;
}

/* calls: (100000, 5) */
MEASURED uint32_t shifted32(uint32_t a, uint8_t by)
{
    return a << by;
}

/* calls: (1000) */
MEASURED uint16_t times_ten(uint16_t a)
{
    return (a << 3) + (a << 1);
}

/* calls: (-300) (20) (500) */
MEASURED int8_t clipped(int16_t value)
{
    if (value > 127) {
        return 127;
    }
    if (value < -127) {
        return -127;
    }
    return value;
}

/* calls: (2.5, 3.25) */
MEASURED float float_sum(float a, float b)
{
    return a + b;
}

/* calls: (2.5, 3.25) (100.0, 0.3) */
MEASURED float float_mix(float a, float b)
{
    return a * b + a / b;
}

/* calls: (100) (-3000) */
MEASURED int16_t to_millimetres(int16_t counts)
{
    return counts * 0.0847f;
}

/* calls: (100) (5) (0) */
MEASURED uint16_t triangle(uint8_t upto)
{
    uint16_t sum = 0;
    for (uint8_t n = 1; n <= upto; n++) {
        sum += n;
    }
    return sum;
}

/* calls: (48, 36) (17, 5) */
MEASURED uint8_t common_divisor(uint8_t a, uint8_t b)
{
    while (a != b) {
        if (a > b) {
            a -= b;
        } else {
            b -= a;
        }
    }
    return a;
}
