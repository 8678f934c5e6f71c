#include "port.h"

#define SIZE 8
static volatile uint8_t buffer[SIZE], head, tail;
static uint8_t put(uint8_t byte)
{
    uint8_t next = (head + 1) & (SIZE - 1);
    if (next == tail)
        return 0;
    buffer[head] = byte;
    head = next;
    return 1;
}
static int get(void)
{
    if (head == tail)
        return -1;
    uint8_t byte = buffer[tail];
    tail = (tail + 1) & (SIZE - 1);
    return byte;
}

int main(void)
{
    uint8_t lost = 0;
    for (uint8_t i = 0; i < 40; i++) {
        if (!put(i * 7))
            lost++;
        if (i % 3 == 0)
            SHOW(get());
    }
    SHOW(lost);
    for (int byte; (byte = get()) >= 0;)
        SHOW(byte);
    finish();
    return 0;
}
