/* The night Ferry of Lantern Street, on the ATmega328P's own oscillator of 8 MHz. The mouse is in remote mode: it says
 * nothing until it is asked, so that one thing can be done after the other, the serial bits among them. */
#ifndef FERRY_H
#define FERRY_H

#include <avr/io.h>
#include <stdbool.h>
#include <stdint.h>

#ifndef F_CPU
#define F_CPU 8000000UL
#endif

#define CLOCK_PIN PD5
#define DATA_PIN PD6
#define TX_PIN PB1
#define RTS_PIN PB2

typedef struct {
    int16_t x;
    int16_t y;
    bool left, right, middle;
} state_t;

/* clock.c: timer 1 counts microseconds and is never stopped or set. */
void clock_init(void);
uint16_t clock_us(void);
/* Call it at least every 60 ms; milliseconds since the last restart_ms. */
void restart_ms(void);
uint16_t elapsed_ms(void);

/* mouse.c */
void mouse_init(void);
bool mouse_setup(void);
/* Asks for what has moved since the last time; false when the mouse does not answer as it should. */
bool mouse_ask(state_t *state);

/* serial.c */
void serial_init(void);
/* RTS is on, and the PC knows who is there. */
bool serial_is_wanted(void);
void serial_byte(uint8_t value);
/* True once when the PC has turned RTS on: it wants to know who is there. */
bool serial_was_asked(void);

/* main.c: says who is there. */
void introduce(void);

#endif
