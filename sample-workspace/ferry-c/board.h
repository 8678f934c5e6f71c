/* The Ferry, an adapter on the long bench of the Lantern Street reading room: a PS/2 mouse on one side,
 * the serial port of the catalogue PC of 1989 on the other. An ATmega328P at 16 MHz stands between them. */
#ifndef BOARD_H
#define BOARD_H

#include <avr/io.h>

#ifndef F_CPU
#define F_CPU 16000000UL
#endif

/* PS/2 port: both lines on port D, the clock on INT0. */
#define PS2_PORT PORTD
#define PS2_DDR DDRD
#define PS2_PIN PIND
#define PS2_CLOCK PD2
#define PS2_DATA PD3

/* RTS of the PC, behind an inverting level shifter: ON reads low. */
#define RTS_PIN PIND
#define RTS_BIT PD4

#endif
