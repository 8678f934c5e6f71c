/* Five-byte reports to the plotting program. */
#ifndef PC_H
#define PC_H

#include <stdint.h>

/* Buttons as they come: bit 0 left, bit 1 right, bit 2 middle. */
struct pace {
    int16_t x;
    int16_t y; /* away from the user */
    uint8_t buttons;
};

void pc_open(void);

/* To be called at least every few milliseconds. */
void pc_serve(void);

/* False while the buttons of an earlier pace have not been told yet: the mouse has to wait. */
uint8_t pc_has_room(void);
void pc_put(const struct pace *pace);

#endif
