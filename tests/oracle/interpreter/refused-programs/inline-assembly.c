#include "port.h"

int main(void)
{
    uint8_t value = 0x3C;
    text("so far\n");
    __asm__("swap %0" : "+r"(value));
    SHOW(value);
    finish();
    return 0;
}
