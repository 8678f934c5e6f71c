/* A count of milliseconds since power-on. */
#ifndef CLOCK_H
#define CLOCK_H

#include <stdint.h>

void clock_start(void);

/* Wraps after 65.5 seconds: compare differences only. */
uint16_t clock_ms(void);

#endif
