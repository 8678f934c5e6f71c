#include "port.h"

struct packet {
    union {
        struct { uint8_t low, high; };
        uint16_t word;
    };
    uint8_t tail;
};

int main(void)
{
    struct packet packet = { { .word = 0xABCD }, 7 };
    SHOW(packet.low);
    packet.high = 1;
    SHOW(packet.word);
    SHOW(packet.tail);
    SHOW(sizeof packet);
    struct packet other = packet;
    other.low++;
    SHOW(other.word - packet.word);
    finish();
    return 0;
}
