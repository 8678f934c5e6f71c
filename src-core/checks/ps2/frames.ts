/** Small firmware around the examples of the rules: a host that sends, in both usual styles. */

/** Registers: the pins, and a function that sends a byte after holding the clock for `hold` microseconds. */
export function registerHost(hold: number, rest: string): string {
  return `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=PD2 data=PD3 pullups=external
#include <avr/io.h>
#include <util/delay.h>

static void pull_low(uint8_t pin) {
  PORTD &= ~_BV(pin);
  DDRD |= _BV(pin);
}

static void release(uint8_t pin) {
  DDRD &= ~_BV(pin);
}

static void wait_for_clock(void) {
  while (!(PIND & _BV(PD2))) {
  }
  while (PIND & _BV(PD2)) {
  }
}

static void ps2_send(uint8_t value) {
  uint8_t parity = 1;
  pull_low(PD2);
  _delay_us(${hold});
  pull_low(PD3);
  release(PD2);
  for (uint8_t i = 0; i < 8; i++) {
    wait_for_clock();
    if (value & 1) {
      release(PD3);
      parity ^= 1;
    } else {
      pull_low(PD3);
    }
    value >>= 1;
  }
  wait_for_clock();
  if (parity) {
    release(PD3);
  } else {
    pull_low(PD3);
  }
  wait_for_clock();
  release(PD3);
  wait_for_clock();
}

static uint8_t ps2_read(void) {
  uint8_t value = 0;
  wait_for_clock();
  for (uint8_t i = 0; i < 8; i++) {
    wait_for_clock();
    value = (value >> 1) | (PIND & _BV(PD3) ? 0x80 : 0);
  }
  wait_for_clock();
  wait_for_clock();
  return value;
}

static void command(uint8_t value) {
  ps2_send(value);
  ps2_read();
}

${rest}`;
}
