/* The Ferry's second crossing: the mouse of the map table in the Lantern Street reading room, whose PC knows a middle
 * button. An ATmega328P at 16 MHz; everything that is not the mouse's clock is done between interrupts. */
#ifndef BOARD_H
#define BOARD_H

#include <avr/io.h>

#ifndef F_CPU
#define F_CPU 16000000UL
#endif

/* PS/2: clock on INT1, data beside it. */
#define CLOCK PD3
#define DATA PD4

/* RTS of the PC behind an inverting level shifter: low is ON. */
#define RTS PB0

#endif
