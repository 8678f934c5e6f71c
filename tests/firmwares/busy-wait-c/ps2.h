/* Both directions of the PS/2 wires, each by waiting for the mouse's clock. Between calls the clock is held low. */
#ifndef PS2_H
#define PS2_H

#include <stdint.h>

enum result { OK, NOTHING, CUT, WRONG_PARITY };

void ps2_open(void);

/* Lets the mouse speak for a moment: a byte if it has one, NOTHING if not. */
enum result ps2_listen(uint8_t *byte);

/* OK when the mouse took the byte. */
enum result ps2_tell(uint8_t byte);

#endif
