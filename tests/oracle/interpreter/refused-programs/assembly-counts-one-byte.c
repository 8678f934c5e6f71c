#include "port.h"

int main(void)
{
    uint16_t count = 0x0105;
    text("so far\n");
    /* Counts the low byte alone. */
    __asm__ volatile ("1: dec %0\n\tbrne 1b" : "+r" (count));
    SHOW(count);
    finish();
    return 0;
}
