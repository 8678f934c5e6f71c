/* The first try of the Ferry, from before it met a second mouse. */
#ifndef BOARD_H
#define BOARD_H

#include <avr/io.h>

#define PS2_CLOCK PD2
#define PS2_DATA PD3

#define RTS_BIT PD4

#endif
