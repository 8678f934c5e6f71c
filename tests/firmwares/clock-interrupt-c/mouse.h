/* The mouse: sets it up and takes its reports apart. Nothing here waits. */
#ifndef MOUSE_H
#define MOUSE_H

#include <stdbool.h>
#include <stdint.h>

struct motion {
    int16_t dx; /* to the right */
    int16_t dy; /* away from the user */
    bool left;
    bool middle;
    bool right;
};

/* To be called all the time; true when there is motion to pass on. */
bool mouse_step(struct motion *motion);

#endif
