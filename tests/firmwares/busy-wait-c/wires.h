/* The Ferry for the drawing board of Lantern Street: its plotting program wants five bytes. An ATmega168 with a crystal
 * of 7.3728 MHz, and not one interrupt: the mouse may speak only while the clock is let go. Two resistors of 4.7 kOhm
 * pull the lines up. */
#ifndef WIRES_H
#define WIRES_H

#include <avr/io.h>

#ifndef F_CPU
#define F_CPU 7372800UL
#endif

#include <util/delay.h>

#define CLK 0 /* PC0 */
#define DAT 1 /* PC1 */
#define RTS 2 /* PD2, low is ON */

#define pull(bit) (DDRC |= 1 << (bit))
#define let_go(bit) (DDRC &= ~(1 << (bit)))
#define is_high(bit) (PINC & (1 << (bit)))

/* Timer 1 runs freely with F_CPU / 1024: 7.2 counts are a millisecond. */
#define TICKS(ms) ((uint16_t)((ms) * 72UL / 10 + 1))

static inline uint16_t now(void)
{
    return TCNT1;
}

#endif
