import { idleLevel } from "../../../../src-core/checks/serial/idle-level.ts";
import { ruleTests } from "../harness.ts";

// Between bytes the line is at mark, a negative voltage: RS-232 overview SLLA607; EIA/TIA-232-E, 2.1.3. An inverting
// shifter makes mark of a high pin. A UART of an AVR rests high: ATmega48A/PA/88A/PA/168A/PA/328/P datasheet (8271D),
// USART0, Frame Formats ("an IDLE line must be high"). Ports are inputs and low after reset: the same, I/O-Ports.

const sendC = `static void send(uint8_t value) {
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
`;

ruleTests(idleLevel, {
  wrong: {
    "an output that stays low until something is sent": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 rts=PB4 report=two-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
${sendC}int main(void) {
  DDRB = _BV(PB1);
//^^^^^^^^^^^^^^^ serial/idle-level: stays at space
  for (;;) {
    if (!(PINB & _BV(PB4))) {
      send('M');
      while (!(PINB & _BV(PB4))) {
      }
    }
  }
}
`,
    },
    "an output in a sketch, high only after the mouse has woken": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=8 report=two-button shifter=inverting
const uint8_t TX = 8;
void sendByte(uint8_t value) {
  digitalWrite(TX, LOW);
  delayMicroseconds(833);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(TX, value & 1);
    value >>= 1;
    delayMicroseconds(833);
  }
  digitalWrite(TX, HIGH);
  delayMicroseconds(833);
}
void setup() {
  pinMode(TX, OUTPUT);
//^^^^^^^^^^^^^^^^^^^ serial/idle-level: 500 ms
  delay(500);
  digitalWrite(TX, HIGH);
}
void loop() {
  sendByte('M');
}
`,
    },
    "levels turned over behind an inverting shifter": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 report=two-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static void send(uint8_t value) {
  PORTB |= _BV(PB1);
//^^^^^^^^^^^^^^^^^ serial/idle-level: start bit
  _delay_us(833);
  for (uint8_t i = 0; i < 7; i++) {
    if (value & 1) {
      PORTB &= ~_BV(PB1);
    } else {
      PORTB |= _BV(PB1);
    }
    value >>= 1;
    _delay_us(833);
  }
  PORTB &= ~_BV(PB1);
  _delay_us(833);
}
int main(void) {
  DDRB = _BV(PB1);
  for (;;) {
    send('M');
  }
}
`,
    },
    "a UART without a shifter": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button shifter=none
//                                               ^^^^ serial/idle-level: UART
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    loop_until_bit_is_set(UCSR0A, UDRE0);
    UDR0 = 'M';
  }
}
`,
    },
    "a software port that turns the levels over, and a shifter that does so again": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=9 report=two-button shifter=inverting
//                                             ^^^^^^^^^ serial/idle-level: pc
#include <SoftwareSerial.h>
SoftwareSerial pc(8, 9, true);
void setup() {
  pc.begin(1200);
}
void loop() {
  pc.write('M' | 0x80);
}
`,
    },
    "TXD driven low before the transmitter is on": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button shifter=inverting
#define F_CPU 16000000UL
#include <avr/io.h>
#include <util/delay.h>
#define OUTPUT(port, bit) DDR##port |= _BV(P##port##bit)
int main(void) {
  OUTPUT(D, 1);
//^^^^^^^^^^^^ serial/idle-level: 100 ms
  for (uint8_t i = 0; i < 10; i++) _delay_ms(10);
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    loop_until_bit_is_set(UCSR0A, UDRE0);
    UDR0 = 'M';
  }
}
`,
    },
    "a class whose constructor leaves the pin low": {
      "port.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=5 rts=4 report=two-button shifter=inverting
class Line {
 public:
  explicit Line(uint8_t pin) : pin(pin) {}
  void begin() {
    digitalWrite(pin, LOW);
    pinMode(pin, OUTPUT);
  //^^^^^^^^^^^^^^^^^^^^ serial/idle-level: stays at space
  }
  void write(uint8_t value) {
    digitalWrite(pin, LOW);
    delayMicroseconds(833);
    for (uint8_t mask = 1; mask < 0x80; mask <<= 1) {
      digitalWrite(pin, (value & mask) != 0);
      delayMicroseconds(833);
    }
    digitalWrite(pin, HIGH);
    delayMicroseconds(833);
  }
 private:
  uint8_t pin;
};
Line line(5);
void setup() { line.begin(); }
void loop() {
  if (digitalRead(4) == LOW) line.write('M');
}
`,
    },
  },
  right: {
    "high before it is an output": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 rts=PB4 report=two-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
${sendC}int main(void) {
  PORTB = _BV(PB1);
  DDRB = _BV(PB1);
  for (;;) {
    if (!(PINB & _BV(PB4))) {
      send('M');
      while (!(PINB & _BV(PB4))) {
      }
    }
  }
}
`,
    },
    "high right after it became an output": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=8 rts=4 report=two-button shifter=inverting
const uint8_t TX = 8;
void sendByte(uint8_t value) {
  digitalWrite(TX, LOW);
  delayMicroseconds(833);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(TX, value & 1);
    value >>= 1;
    delayMicroseconds(833);
  }
  digitalWrite(TX, HIGH);
  delayMicroseconds(833);
}
void setup() {
  pinMode(TX, OUTPUT);
  digitalWrite(TX, HIGH);
  delay(500);
}
void loop() {
  if (digitalRead(4) == LOW) sendByte('M');
}
`,
    },
    "levels turned over by the program, as nothing else does": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 report=two-button shifter=none
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static void send(uint8_t value) {
  PORTB |= _BV(PB1);
  _delay_us(833);
  for (uint8_t i = 0; i < 7; i++) {
    if (value & 1) {
      PORTB &= ~_BV(PB1);
    } else {
      PORTB |= _BV(PB1);
    }
    value >>= 1;
    _delay_us(833);
  }
  PORTB &= ~_BV(PB1);
  _delay_us(833);
}
int main(void) {
  DDRB = _BV(PB1);
  _delay_ms(500);
  for (;;) {
    if (!(PINB & _BV(PB4))) send('M');
  }
}
`,
    },
    "nobody says whether there is a shifter": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 rts=PB4 report=two-button
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
${sendC}int main(void) {
  DDRB = _BV(PB1);
  for (;;) {
    if (!(PINB & _BV(PB4))) send('M');
  }
}
`,
    },
    "a UART behind an inverting shifter": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button shifter=inverting
#include <avr/io.h>
int main(void) {
  DDRD |= _BV(PD1);
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    loop_until_bit_is_set(UCSR0A, UDRE0);
    UDR0 = 'M';
  }
}
`,
    },
    "a software port that turns the levels over, as nothing else does": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=9 report=two-button shifter=none
#include <SoftwareSerial.h>
SoftwareSerial pc(8, 9, true);
void setup() {
  pc.begin(1200);
}
void loop() {
  pc.write('M' | 0x80);
}
`,
    },
    "sent at once, so that the line rests at mark from then on": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 rts=PB4 report=two-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
${sendC}int main(void) {
  DDRB = _BV(PB1);
  send('M');
  _delay_ms(500);
  for (;;) {
    if (!(PINB & _BV(PB4))) send('M');
  }
}
`,
    },
    "another pin that stays low": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=8 report=two-button shifter=inverting
void setup() {
  pinMode(7, OUTPUT);
  digitalWrite(8, HIGH);
  pinMode(8, OUTPUT);
  delay(500);
}
void loop() {
}
`,
    },
  },
});
