#include "port.h"

struct Odd { static uint8_t parity(uint8_t ones) { return !(ones & 1); } };
struct Even { static uint8_t parity(uint8_t ones) { return ones & 1; } };
template <class Parity, int Stop = 1> class Framer {
public:
    static uint16_t frame(uint8_t byte)
    {
        uint16_t bits = 0;
        uint8_t ones = 0;
        for (uint8_t i = 0; i < 8; i++)
            if (byte & (1 << i)) {
                bits |= 2u << i;
                ones++;
            }
        bits |= (uint16_t)Parity::parity(ones) << 9;
        for (int i = 0; i < Stop; i++)
            bits |= 1u << (10 + i);
        return bits;
    }
};

int main()
{
    for (int byte = 0; byte < 256; byte += 51) {
        hex(Framer<Odd>::frame(byte), 4);
        hex(Framer<Even, 2>::frame(byte), 4);
        send('\n');
    }
    finish();
}
