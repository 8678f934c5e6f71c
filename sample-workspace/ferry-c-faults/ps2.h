#ifndef PS2_H
#define PS2_H

#include <stdbool.h>
#include <stdint.h>

void ps2_start(void);
void ps2_set_up_mouse(void);
bool ps2_read(uint8_t *value);

#endif
