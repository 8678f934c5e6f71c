#include "port.h"

enum Phase { Wait, Sync, Body };
class Assembler {
    Phase phase = Wait;
    uint8_t packet[3], used = 0;
public:
    int good = 0, bad = 0;
    void feed(uint8_t byte)
    {
        switch (phase) {
        case Wait:
            if (byte != 0xAA) {
                bad++;
                break;
            }
            phase = Sync;
            break;
        case Sync:
            phase = byte == 0x00 ? Body : Wait;
            used = 0;
            break;
        case Body:
            if (used == 0 && !(byte & 0x08)) {
                ++bad;
                return;
            }
            packet[used++] = byte;
            if (used < sizeof packet)
                return;
            used = 0;
            good++;
            show("x", packet[1] - ((packet[0] << 4) & 0x100));
            show("y", packet[2] - ((packet[0] << 3) & 0x100));
        }
    }
};

int main()
{
    static const uint8_t stream[] = { 1, 0xAA, 0, 8, 5, 6, 0x18, 0xFF, 2, 0x00, 0x28, 7, 0x80, 0x38, 1, 1 };
    Assembler assembler;
    for (uint8_t byte : stream)
        assembler.feed(byte);
    SHOW(assembler.good);
    SHOW(assembler.bad);
    finish();
}
