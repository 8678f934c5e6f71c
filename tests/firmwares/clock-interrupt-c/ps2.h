/* The wires to the mouse. Both directions are clocked by the mouse, so both are done in the clock's interrupt. */
#ifndef PS2_H
#define PS2_H

#include <stdbool.h>
#include <stdint.h>

enum ps2_frame { PS2_NONE, PS2_BYTE, PS2_BROKEN };
enum ps2_sent { PS2_BUSY, PS2_TAKEN, PS2_REFUSED };

void ps2_start(void);

/* The next frame that came in, if any. */
enum ps2_frame ps2_next(uint8_t *byte);

/* Forgets all that came in. */
void ps2_flush(void);

/* Asks the mouse to take a byte; how that went is told by ps2_sending. */
void ps2_send(uint8_t byte);
enum ps2_sent ps2_sending(void);

/* Takes the wires back from a mouse that does not clock. */
void ps2_give_up(void);

#endif
