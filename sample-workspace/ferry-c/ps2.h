/* Host side of the PS/2 port. */
#ifndef PS2_H
#define PS2_H

#include <stdbool.h>
#include <stdint.h>

/* One movement as the mouse reports it: x grows to the right, y away from the user. */
struct movement {
    int16_t dx;
    int16_t dy;
    bool left;
    bool right;
};

void ps2_start(void);

/* Resets the mouse and sets it up; false when it does not answer. Takes up to two seconds. */
bool ps2_set_up_mouse(void);

/* Called over and over while the set-up waits for an answer, so that the PC is not kept waiting too.
 * The program that uses the port defines it. */
void ps2_while_waiting(void);

/* True when a whole report has come in; never waits. */
bool ps2_read_movement(struct movement *out);

/* True once after the mouse restarted itself: it has to be set up again. */
bool ps2_mouse_restarted(void);

#endif
