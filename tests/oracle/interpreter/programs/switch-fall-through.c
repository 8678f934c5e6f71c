#include "port.h"

static int weight(uint8_t command)
{
    int sum = 0;
    switch (command) {
    default:
        sum += 1;
        /* falls through */
    case 0xF2:
        sum += 10;
    case 0xF3:
        sum += 100;
        break;
    case 0xFF: {
        int inner = 7;
        sum = inner;
        break;
    }
    case 0xE8:
    case 0xE9:
        return -5;
    case 'a' ... 'f':
        sum = command - 'a' + 1000;
    }
    return sum;
}

int main(void)
{
    static const uint8_t commands[] = { 0, 0xF2, 0xF3, 0xFF, 0xE8, 0xE9, 'a', 'f', 'g' };
    for (unsigned i = 0; i < sizeof commands; i++) {
        SHOW(weight(commands[i]));
    }
    switch (3) {
        int unused;
        case 4: send('4');
    }
    switch (-1L) {
    case -1: text("minus one");
    }
    finish();
    return 0;
}
