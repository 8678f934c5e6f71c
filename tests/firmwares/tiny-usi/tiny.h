/* The Ferry in a matchbox, for the porter's lodge of Lantern Street: an ATtiny85 at 8 MHz. Its USI shifts the mouse's
 * bits in on the mouse's own clock, and timer 0 makes the bits to the PC. The two transistors between chip and PC turn
 * nothing over: mark is low at the pin, and RTS that is ON is high. */
#ifndef TINY_H
#define TINY_H

#include <avr/io.h>
#include <stdbool.h>
#include <stdint.h>

#ifndef F_CPU
#define F_CPU 8000000UL
#endif

#define DATA PB0  /* DI of the USI */
#define CLOCK PB2 /* USCK */
#define RTS PB3
#define TX PB4

/* receiver.c: bytes of the mouse, taken in by the USI */
void receiver_on(void);
void receiver_off(void);
/* In the timer's interrupt, once per serial bit. */
void receiver_tick(void);
bool receiver_has(void);
uint8_t receiver_get(void);
void receiver_forget(void);

/* sender.c: bytes to the mouse */
bool mouse_tell(uint8_t byte);

/* line.c: the serial line, and time in ticks of one bit of it */
void line_start(void);
uint16_t line_ticks(void);
bool line_is_free(void);
void line_put(uint8_t byte);

#define TICKS(ms) ((uint16_t)((ms) * 6UL / 5 + 1))

#endif
