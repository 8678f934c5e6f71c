import { avrOnly, type HeaderText } from "./header-target.ts";

/** Headers in avr-libc's `util` folder: what its manual documents of them, in our own text. */

export const delay: HeaderText = avrOnly(`#pragma once
#include <stdint.h>
#include <avr/builtins.h>
#include <util/delay_basic.h>
void _delay_ms(double milliseconds);
void _delay_us(double microseconds);
`);

export const delayBasic: HeaderText = avrOnly(`#pragma once
#include <stdint.h>
void _delay_loop_1(uint8_t count);
void _delay_loop_2(uint16_t count);
`);

/**
 * The divisor is the clock over 16 (or 8) times the rate, rounded to nearest, less one. Double speed is used
 * where the rate that comes out at normal speed is further off than BAUD_TOL percent.
 */
export const setbaud: HeaderText = avrOnly(`#ifndef F_CPU
#error "util/setbaud.h needs F_CPU: the clock in Hz"
#endif
#ifndef BAUD
#error "util/setbaud.h needs BAUD: the rate in bit/s"
#endif
#if defined(F_CPU) && defined(BAUD)
#undef USE_2X
#undef UBRR_VALUE
#undef UBRRL_VALUE
#undef UBRRH_VALUE
#ifndef BAUD_TOL
#define BAUD_TOL 2
#endif
#define __BAUD_SAMPLES 16
#define UBRR_VALUE (((F_CPU) + 8UL * (BAUD)) / (16UL * (BAUD)) - 1UL)
#if (F_CPU) * 100 > __BAUD_SAMPLES * (UBRR_VALUE + 1) * (BAUD) * (100 + (BAUD_TOL)) \\
  || (F_CPU) * 100 < __BAUD_SAMPLES * (UBRR_VALUE + 1) * (BAUD) * (100 - (BAUD_TOL))
#define USE_2X 1
#undef UBRR_VALUE
#define UBRR_VALUE (((F_CPU) + 4UL * (BAUD)) / (8UL * (BAUD)) - 1UL)
#else
#define USE_2X 0
#endif
#undef __BAUD_SAMPLES
#define UBRRL_VALUE (UBRR_VALUE & 0xff)
#define UBRRH_VALUE (UBRR_VALUE >> 8)
#endif
`);

export const atomic: HeaderText = avrOnly(`#pragma once
#include <avr/io.h>
#include <avr/interrupt.h>
static inline uint8_t __interrupts_off(void) { cli(); return 1; }
static inline uint8_t __interrupts_on(void) { sei(); return 1; }
static inline void __restore_status(const uint8_t *status) { SREG = *status; }
static inline void __leave_on(const uint8_t *status) { (void)status; sei(); }
static inline void __leave_off(const uint8_t *status) { (void)status; cli(); }
#define ATOMIC_BLOCK(type) for (type, __once = __interrupts_off(); __once; __once = 0)
#define NONATOMIC_BLOCK(type) for (type, __once = __interrupts_on(); __once; __once = 0)
#define ATOMIC_RESTORESTATE uint8_t __status __attribute__((__cleanup__(__restore_status))) = SREG
#define ATOMIC_FORCEON uint8_t __status __attribute__((__cleanup__(__leave_on))) = 0
#define NONATOMIC_RESTORESTATE uint8_t __status __attribute__((__cleanup__(__restore_status))) = SREG
#define NONATOMIC_FORCEOFF uint8_t __status __attribute__((__cleanup__(__leave_off))) = 0
`);

/** 1 for a value with an odd number of ones. */
export const parity: HeaderText = avrOnly(`#pragma once
#include <stdint.h>
uint8_t parity_even_bit(uint8_t value);
`);

export const crc16: HeaderText = avrOnly(`#pragma once
#include <stdint.h>
uint16_t _crc16_update(uint16_t crc, uint8_t data);
uint16_t _crc_xmodem_update(uint16_t crc, uint8_t data);
uint16_t _crc_ccitt_update(uint16_t crc, uint8_t data);
uint8_t _crc_ibutton_update(uint8_t crc, uint8_t data);
uint8_t _crc8_ccitt_update(uint8_t crc, uint8_t data);
`);
