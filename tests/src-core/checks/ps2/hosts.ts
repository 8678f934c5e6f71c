/**
 * Hosts of a PS/2 mouse in the styles that people write them. Each sends with `command(byte)`, which waits for the
 * answer as long as it takes, and reads with `reply()`. Frames, edges and parity as in The PS/2 Mouse/Keyboard
 * Protocol (2003); pull-ups outside, so that no rule but the one under test has something to say.
 */
export interface HostSetting {
  /** Microseconds that the clock is held, as the code writes them. */
  readonly hold?: string;
  /** Lines of carets under the delay. */
  readonly under?: string;
  /** What stands in front of everything, notes included. */
  readonly notes?: string;
}

const notesC = "// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD2 data=PD3 pullups=external\n";

/** Port registers behind small functions, polled clock. */
export function registers({ hold = "100", under = "", notes = notesC }: HostSetting, rest: string): string {
  return `${notes}#include <avr/io.h>
#include <util/delay.h>

#define CLOCK PD2
#define DATA PD3

static void low(uint8_t bit) {
  PORTD &= ~(1 << bit);
  DDRD |= (1 << bit);
}

static void release(uint8_t bit) { DDRD &= ~(1 << bit); }

static void clock_falls(void) {
  loop_until_bit_is_set(PIND, CLOCK);
  loop_until_bit_is_clear(PIND, CLOCK);
}

static void put(uint8_t bit) {
  if (bit) {
    release(DATA);
  } else {
    low(DATA);
  }
}

void mouse_send(uint8_t value) {
  uint8_t parity = 1;
  low(CLOCK);
  _delay_us(${hold});
${under}  low(DATA);
  release(CLOCK);
  for (uint8_t i = 0; i < 8; i++) {
    clock_falls();
    put(value & 1);
    parity ^= value & 1;
    value >>= 1;
  }
  clock_falls();
  put(parity);
  clock_falls();
  release(DATA);
  clock_falls();
}

uint8_t reply(void) {
  uint8_t value = 0;
  clock_falls();
  for (uint8_t i = 0; i < 8; i++) {
    clock_falls();
    value >>= 1;
    if (PIND & (1 << DATA)) {
      value |= 0x80;
    }
  }
  clock_falls();
  clock_falls();
  return value;
}

uint8_t command(uint8_t value) {
  mouse_send(value);
  return reply();
}

${rest}`;
}

const notesSketch = "// @wire ps2 clock=2 data=3 pullups=external\n";

/** Core functions on board numbers; no chip is said. */
export function sketch({ hold = "100", under = "", notes = notesSketch }: HostSetting, rest: string): string {
  return `${notes}#define CLK 2
#define DAT 3

void pullLow(int pin) {
  digitalWrite(pin, LOW);
  pinMode(pin, OUTPUT);
}

void letGo(int pin) {
  pinMode(pin, INPUT);
}

void waitFall() {
  while (digitalRead(CLK) == LOW) ;
  while (digitalRead(CLK) == HIGH) ;
}

void sendByte(byte data) {
  byte parity = 1;
  pullLow(CLK);
  delayMicroseconds(${hold});
${under}  pullLow(DAT);
  letGo(CLK);
  for (int i = 0; i < 8; i++) {
    waitFall();
    if (bitRead(data, i)) {
      letGo(DAT);
      parity ^= 1;
    } else {
      pullLow(DAT);
    }
  }
  waitFall();
  if (parity) letGo(DAT); else pullLow(DAT);
  waitFall();
  letGo(DAT);
  waitFall();
}

byte reply() {
  byte value = 0;
  waitFall();
  for (int i = 0; i < 8; i++) {
    waitFall();
    bitWrite(value, i, digitalRead(DAT));
  }
  waitFall();
  waitFall();
  return value;
}

byte command(byte value) {
  sendByte(value);
  return reply();
}

${rest}`;
}

const notesTiny = "/* @wire board attiny85 clock=8MHz\n   @wire ps2 clock=PB2 data=PB0 pullups=external */\n";

/** Names pasted together by macros; the output bits stay 0 and the direction alone pulls low. */
export function pasted({ hold = "100", under = "", notes = notesTiny }: HostSetting, rest: string): string {
  return `${notes}#include <avr/io.h>
#include <util/delay.h>
#include <stdbool.h>

#define GLUE_(a, b) a##b
#define GLUE(a, b) GLUE_(a, b)
#define CLOCK_PORT B
#define CLOCK_BIT 2
#define DATA_PORT B
#define DATA_BIT 0
#define DIR(line) GLUE(DDR, line##_PORT)
#define IN(line) GLUE(PIN, line##_PORT)
#define MASK(line) _BV(line##_BIT)
#define PULL(line) (DIR(line) |= MASK(line))
#define LET_GO(line) (DIR(line) &= ~MASK(line))
#define IS_HIGH(line) (IN(line) & MASK(line))
#define UNTIL_FALL() do { while (!IS_HIGH(CLOCK)) {} while (IS_HIGH(CLOCK)) {} } while (0)
#define HOLD_US ${hold}
${under}
static void send(uint8_t byte) {
  bool odd = true;
  PULL(CLOCK);
  _delay_us(HOLD_US);
  PULL(DATA);
  LET_GO(CLOCK);
  for (uint8_t mask = 1; mask; mask <<= 1) {
    UNTIL_FALL();
    if (byte & mask) {
      LET_GO(DATA);
      odd = !odd;
    } else {
      PULL(DATA);
    }
  }
  UNTIL_FALL();
  if (odd) LET_GO(DATA); else PULL(DATA);
  UNTIL_FALL();
  LET_GO(DATA);
  UNTIL_FALL();
}

static uint8_t reply(void) {
  uint8_t byte = 0;
  UNTIL_FALL();
  for (uint8_t mask = 1; mask; mask <<= 1) {
    UNTIL_FALL();
    if (IS_HIGH(DATA)) byte |= mask;
  }
  UNTIL_FALL();
  UNTIL_FALL();
  return byte;
}

static uint8_t command(uint8_t byte) {
  send(byte);
  return reply();
}

${rest}`;
}

/** A class with its pins as constructor arguments, the object made at file level. */
export function classBased(
  { hold = "100", under = "", notes = notesSketch }: HostSetting,
  rest: string,
): string {
  return `${notes}#include <Arduino.h>

class Mouse {
public:
  Mouse(uint8_t clock, uint8_t data) : clock_(clock), data_(data) {}

  uint8_t command(uint8_t value) {
    send(value);
    return receive();
  }

  uint8_t receive() {
    uint8_t value = 0;
    fall();
    for (uint8_t i = 0; i < 8; ++i) {
      fall();
      value |= digitalRead(data_) << i;
    }
    fall();
    fall();
    return value;
  }

private:
  void send(uint8_t value) {
    bool odd = true;
    low(clock_);
    delayMicroseconds(holdUs);
    low(data_);
    high(clock_);
    for (uint8_t i = 0; i < 8; ++i, value >>= 1) {
      fall();
      if (value & 1) {
        high(data_);
        odd = !odd;
      } else {
        low(data_);
      }
    }
    fall();
    if (odd) {
      high(data_);
    } else {
      low(data_);
    }
    fall();
    high(data_);
    fall();
  }
  void fall() {
    while (!digitalRead(clock_)) {}
    while (digitalRead(clock_)) {}
  }
  void low(uint8_t pin) {
    digitalWrite(pin, LOW);
    pinMode(pin, OUTPUT);
  }
  void high(uint8_t pin) { pinMode(pin, INPUT); }

  static const unsigned holdUs = ${hold};
${under}  const uint8_t clock_;
  const uint8_t data_;
};

Mouse mouse(2, 3);

uint8_t command(uint8_t value) { return mouse.command(value); }
uint8_t reply() { return mouse.receive(); }

${rest}`;
}

/** The clock makes an interrupt; sending is done by the handler, a bit per edge. */
export function interruptDriven(
  { hold = "100", under = "", notes = notesC }: HostSetting,
  rest: string,
): string {
  return `${notes}#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>

static volatile uint8_t sending, bits, shift, parity, answer, answered;

#define CLOCK_LOW() do { PORTD &= ~_BV(2); DDRD |= _BV(2); } while (0)
#define CLOCK_RELEASE() do { DDRD &= ~_BV(2); } while (0)
#define DATA_LOW() do { PORTD &= ~_BV(3); DDRD |= _BV(3); } while (0)
#define DATA_RELEASE() do { DDRD &= ~_BV(3); } while (0)

ISR(INT0_vect) {
  if (sending) {
    if (bits < 8) {
      if (shift & 1) {
        DATA_RELEASE();
        parity ^= 1;
      } else {
        DATA_LOW();
      }
      shift >>= 1;
    } else if (bits == 8) {
      if (parity) {
        DATA_RELEASE();
      } else {
        DATA_LOW();
      }
    } else if (bits == 9) {
      DATA_RELEASE();
    } else {
      sending = 0;
      bits = 0;
      return;
    }
    bits++;
  } else {
    if (bits > 0 && bits < 9) {
      answer = (answer >> 1) | ((PIND & _BV(3)) ? 0x80 : 0);
    }
    if (++bits == 11) {
      bits = 0;
      answered = 1;
    }
  }
}

static void start_sending(uint8_t byte) {
  EIMSK &= ~_BV(INT0);
  CLOCK_LOW();
  _delay_us(${hold});
${under}  DATA_LOW();
  shift = byte;
  parity = 1;
  bits = 0;
  sending = 1;
  EIFR = _BV(INTF0);
  CLOCK_RELEASE();
  EIMSK |= _BV(INT0);
}

static uint8_t reply(void) {
  while (!answered) {
  }
  answered = 0;
  return answer;
}

static uint8_t command(uint8_t byte) {
  start_sending(byte);
  while (sending) {
  }
  return reply();
}

${rest}`;
}

/** Ends a program in C that has set the mouse up: it listens for ever. */
export const listens = `  for (;;) {
    reply();
  }
`;
