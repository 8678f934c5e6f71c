#include "board.h"
#include "mouse.h"
#include "pc.h"
#include "ps2.h"
#include "ticks.h"

#include <avr/interrupt.h>

int main(void)
{
    struct motion motion;

    ticks_start();
    pc_start();
    ps2_start();
    sei();
    for (;;) {
        if (mouse_step(&motion)) {
            pc_add(&motion);
        }
        pc_step();
    }
}
