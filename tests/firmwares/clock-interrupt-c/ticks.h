#ifndef TICKS_H
#define TICKS_H

#include <stdint.h>

/* Low byte of the milliseconds, for interrupt handlers. */
extern volatile uint8_t ticks_low;

void ticks_start(void);

/* Milliseconds since power-on; wraps, so that only differences count. */
uint16_t ticks(void);

#endif
