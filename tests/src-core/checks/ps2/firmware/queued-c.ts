/** Everything in interrupts: a queue of bytes to send, a timer that gives up, a table of set-up steps. */
export const queuedC = {
  "ps2.h": `#ifndef PS2_H
#define PS2_H
#include <stdint.h>
#define PS2_DDR DDRB
#define PS2_PORT PORTB
#define PS2_PIN PINB
#define CLOCK_PIN 2
#define DATA_PIN 1
enum ps2_state { PS2_IDLE, PS2_RECEIVING, PS2_SENDING, PS2_FAILED };
void ps2_init(void);
void ps2_start_sending(uint8_t byte);
enum ps2_state ps2_state(void);
int16_t ps2_take(void);
#endif
`,
  "ps2.c": `#include "ps2.h"
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>

static volatile enum ps2_state state;
static volatile uint8_t bit_count, shift, parity;
static volatile int16_t received = -1;

static inline void clock_pull(void) { PS2_DDR |= (1 << CLOCK_PIN); }
static inline void clock_free(void) { PS2_DDR &= ~(1 << CLOCK_PIN); }
static inline void data_pull(void) { PS2_DDR |= (1 << DATA_PIN); }
static inline void data_free(void) { PS2_DDR &= ~(1 << DATA_PIN); }

void ps2_init(void) {
  PS2_PORT &= ~((1 << CLOCK_PIN) | (1 << DATA_PIN));
  clock_free();
  data_free();
  MCUCR |= (1 << ISC01);
  GIMSK |= (1 << INT0);
}

void ps2_start_sending(uint8_t byte) {
  GIMSK &= ~(1 << INT0);
  clock_pull();
  _delay_us(110);
  data_pull();
  shift = byte;
  parity = 1;
  bit_count = 0;
  state = PS2_SENDING;
  clock_free();
  GIFR |= (1 << INTF0);
  GIMSK |= (1 << INT0);
}

static void send_edge(void) {
  if (bit_count < 8) {
    if (shift & 1) {
      data_free();
      parity ^= 1;
    } else {
      data_pull();
    }
    shift >>= 1;
  } else if (bit_count == 8) {
    if (parity) {
      data_free();
    } else {
      data_pull();
    }
  } else if (bit_count == 9) {
    data_free();
  } else {
    state = (PS2_PIN & (1 << DATA_PIN)) ? PS2_FAILED : PS2_IDLE;
    bit_count = 0;
    return;
  }
  bit_count++;
}

static void receive_edge(void) {
  uint8_t level = (PS2_PIN >> DATA_PIN) & 1;
  if (bit_count > 0 && bit_count < 9) {
    shift = (shift >> 1) | (level ? 0x80 : 0);
  }
  if (++bit_count == 11) {
    received = shift;
    bit_count = 0;
    state = PS2_IDLE;
  }
}

ISR(INT0_vect) {
  if (state == PS2_SENDING) {
    send_edge();
  } else {
    state = PS2_RECEIVING;
    receive_edge();
  }
}

enum ps2_state ps2_state(void) { return state; }

int16_t ps2_take(void) {
  cli();
  int16_t taken = received;
  received = -1;
  sei();
  return taken;
}
`,
  "main.c": `// @wire board attiny85 clock=8MHz
// @wire ps2 clock=PB2 data=PB1 pullups=external
#include "ps2.h"
#include <avr/interrupt.h>
#include <util/delay.h>

struct step {
  uint8_t byte;
  uint8_t answers;
  uint16_t wait_ms;
};

static const struct step set_up[] = {
  {0xFF, 3, 2000}, {0xF3, 1, 50}, {40, 1, 50}, {0xE8, 1, 50}, {0x02, 1, 50}, {0xE6, 1, 50}, {0xF4, 1, 50},
};

static uint8_t do_step(const struct step *step) {
  uint8_t answers = 0;
  ps2_start_sending(step->byte);
  for (uint16_t ms = 0; ms < step->wait_ms; ms++) {
    if (ps2_take() >= 0 && ++answers == step->answers) {
      return 1;
    }
    _delay_ms(1);
  }
  return 0;
}

static uint8_t set_up_mouse(void) {
  for (uint8_t i = 0; i < sizeof set_up / sizeof *set_up; i++) {
    if (!do_step(&set_up[i])) {
      return 0;
    }
  }
  return 1;
}

int main(void) {
  ps2_init();
  sei();
  while (!set_up_mouse()) {
    _delay_ms(100);
  }
  for (;;) {
    if (ps2_state() == PS2_FAILED) {
      set_up_mouse();
    }
    ps2_take();
  }
}
`,
};
