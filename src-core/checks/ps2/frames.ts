/** Small firmware around the examples of the rules: a host that sends, in both usual styles. */

/** Registers: the pins, and a function that sends a byte after holding the clock for `hold` microseconds. */
export function registerHost(hold: number, rest: string): string {
  return `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=PD2 data=PD3 pullups=external
#include <avr/io.h>
#include <stdbool.h>
#include <util/delay.h>

static void pull_low(uint8_t pin) {
  PORTD &= ~_BV(pin);
  DDRD |= _BV(pin);
}

static void release(uint8_t pin) {
  DDRD &= ~_BV(pin);
}

/* Until the clock falls; a mouse that is asked for something answers within 25 ms. */
static bool clock_falls(void) {
  uint16_t us = 0;
  while (!(PIND & _BV(PD2))) {
    if (++us > 30000) {
      return false;
    }
    _delay_us(1);
  }
  us = 0;
  while (PIND & _BV(PD2)) {
    if (++us > 30000) {
      return false;
    }
    _delay_us(1);
  }
  return true;
}

static void ps2_send(uint8_t value) {
  uint8_t parity = 1;
  pull_low(PD2);
  _delay_us(${hold});
  pull_low(PD3);
  release(PD2);
  for (uint8_t i = 0; i < 8; i++) {
    clock_falls();
    if (value & 1) {
      release(PD3);
      parity ^= 1;
    } else {
      pull_low(PD3);
    }
    value >>= 1;
  }
  clock_falls();
  if (parity) {
    release(PD3);
  } else {
    pull_low(PD3);
  }
  clock_falls();
  release(PD3);
  clock_falls();
}

/* The byte, or -1 where none came or its parity is not odd. */
static int16_t ps2_read(void) {
  uint8_t value = 0;
  uint8_t parity = 0;
  if (!clock_falls()) {
    return -1;
  }
  for (uint8_t i = 0; i < 8; i++) {
    clock_falls();
    value >>= 1;
    if (PIND & _BV(PD3)) {
      value |= 0x80;
      parity ^= 1;
    }
  }
  clock_falls();
  if (PIND & _BV(PD3)) {
    parity ^= 1;
  }
  clock_falls();
  return parity ? value : -1;
}

static bool command(uint8_t value) {
  ps2_send(value);
  return ps2_read() == 0xFA;
}

${rest}`;
}
