import { identLate } from "../../../../src-core/checks/serial/ident-late.ts";
import { ruleTests } from "../harness.ts";

// The first character is there 200 ms after RTS at the latest: Plug and Play External COM Device Specification 1.00, 2.1.
// From one character to the next the PC waits as long (the probe of a serial enumerator, ReactOS serenum, legacy.c).
// Mice take 14 ms to M and 63 ms more to 3 (manual of a serial mouse, Introduction).

ruleTests(identLate, {
  wrong: {
    "half a second of calm": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  while (digitalRead(4) == HIGH) {
  }
  delay(500);
  //    ^^^ serial/ident-late: 500 ms
  Serial.write('M');
  while (digitalRead(4) == LOW) {
  }
}
`,
    },
    "two delays that are too long together": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#define F_CPU 16000000UL
#include <avr/io.h>
#include <util/delay.h>
#define SETTLE_MS 150
static void put(uint8_t value) {
  loop_until_bit_is_set(UCSR0A, UDRE0);
  UDR0 = value;
}
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  uint8_t was = 0;
  for (;;) {
    uint8_t on = !(PIND & _BV(PD4));
    if (on && !was) {
      _delay_ms(SETTLE_MS);
      //        ^^^^^^^^^ serial/ident-late: 250 ms
      PORTB |= 1;
      _delay_ms(100);
      put('M');
    }
    was = on;
  }
}
`,
    },
    "a helper that counts milliseconds": {
      "main.c": `
// @wire board atmega8 clock=8MHz
// @wire serial uart=0 rts=PD2 report=two-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>
static volatile uint8_t asked;
ISR(INT0_vect) {
  if (bit_is_clear(PIND, PD2)) asked = 1;
}
static void pause(uint16_t ms) {
  while (ms--) {
    _delay_ms(1);
    //        ^ serial/ident-late: 300 ms
  }
}
int main(void) {
  UBRRL = 160;
  UBRRH = 1;
  UCSRB = _BV(TXEN);
  UCSRC = _BV(URSEL) | _BV(UCSZ1);
  MCUCR = _BV(ISC00);
  GICR = _BV(INT0);
  sei();
  for (;;) {
    if (asked) {
      asked = 0;
      pause(300);
      UDR = 'M';
    }
  }
}
`,
    },
    "too long between M and 3": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=middle-button shifter=inverting
const uint8_t RTS = 4;
bool wasOn = false;
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  bool on = digitalRead(RTS) == LOW;
  if (on && !wasOn) {
    delay(14);
    Serial.write('M');
    delay(250);
    //    ^^^ serial/ident-late: 250 ms
    Serial.write('3');
  }
  wasOn = on;
}
`,
    },
    "bit by bit after a long while": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 rts=PB4 report=two-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static void send(uint8_t value) {
  PORTB &= ~_BV(PB1);
  _delay_us(833);
  for (uint8_t i = 0; i < 7; i++) {
    if (value & 1) {
      PORTB |= _BV(PB1);
    } else {
      PORTB &= ~_BV(PB1);
    }
    value >>= 1;
    _delay_us(833);
  }
  PORTB |= _BV(PB1);
  _delay_us(833);
}
int main(void) {
  PORTB |= _BV(PB1);
  DDRB = _BV(PB1);
  for (;;) {
    loop_until_bit_is_clear(PINB, PB4);
    for (uint8_t i = 0; i < 30; i++) _delay_ms(10);
    //                                         ^^ serial/ident-late: 300 ms
    send('M');
    loop_until_bit_is_set(PINB, PB4);
  }
}
`,
    },
    "a constant in a class": {
      "port.ino": `
// @wire board atmega32u4 clock=16MHz
// @wire serial uart=1 rts=4 report=two-button shifter=inverting
class Port {
 public:
  explicit Port(uint8_t rts) : rts(rts) {}
  void begin() { Serial1.begin(1200, SERIAL_7N1); }
  void serve() {
    if (!asked()) return;
    delay(SETTLE);
    //    ^^^^^^ serial/ident-late: 201 ms
    Serial1.write('M');
  }
 private:
  static const int SETTLE = 201;
  bool asked() {
    bool on = !digitalRead(rts);
    bool rose = on && !was;
    was = on;
    return rose;
  }
  uint8_t rts;
  bool was = false;
};
Port port(4);
void setup() { port.begin(); }
void loop() { port.serve(); }
`,
    },
  },
  right: {
    "200 ms are met when they are reached": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  while (digitalRead(4) == HIGH) {
  }
  delay(200);
  Serial.write('M');
  while (digitalRead(4) == LOW) {
  }
}
`,
    },
    "what mice do": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=middle-button shifter=inverting
#define F_CPU 16000000UL
#include <avr/io.h>
#include <util/delay.h>
static void put(uint8_t value) {
  loop_until_bit_is_set(UCSR0A, UDRE0);
  UDR0 = value;
}
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    loop_until_bit_is_clear(PIND, PD4);
    _delay_ms(14);
    put('M');
    _delay_ms(63);
    put('3');
    loop_until_bit_is_set(PIND, PD4);
  }
}
`,
    },
    "a long wait while RTS is off": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  delay(1000);
}
void loop() {
  if (digitalRead(4) == HIGH) {
    delay(300);
    return;
  }
  Serial.write('M');
  while (digitalRead(4) == LOW) {
  }
}
`,
    },
    "the same wait a part of the way": {
      "main.c": `
// @wire board atmega8 clock=8MHz
// @wire serial uart=0 rts=PD2 report=two-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static void pause(uint16_t ms) {
  while (ms--) {
    _delay_ms(1);
  }
}
int main(void) {
  UBRRL = 160;
  UBRRH = 1;
  UCSRB = _BV(TXEN);
  UCSRC = _BV(URSEL) | _BV(UCSZ1);
  pause(800);
  for (;;) {
    if (PIND & _BV(PD2)) continue;
    pause(20);
    UDR = 'M';
    pause(900);
  }
}
`,
    },
    "counted from RTS off": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  if (digitalRead(4) == HIGH) {
    delay(210);
    Serial.write('M');
  }
}
`,
    },
    "delays that are not before it": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
bool wasOn = false;
void blink() {
  digitalWrite(13, HIGH);
  delay(400);
  digitalWrite(13, LOW);
}
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  bool on = digitalRead(4) == LOW;
  if (on && !wasOn) {
    Serial.write('M');
    blink();
  }
  wasOn = on;
}
`,
    },
  },
});
