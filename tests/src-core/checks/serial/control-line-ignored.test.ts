import { controlLineIgnored } from "../../../../src-core/checks/serial/control-line-ignored.ts";
import { ruleTests } from "../harness.ts";

// A PC turns RTS off and on again to ask who is there, once for each probe: the probe sequences of serial enumerators
// (ReactOS serenum, legacy.c; serenum sample, 200 ms) and of moused (240 ms). RTS is off for 100 ms at least.

ruleTests(controlLineIgnored, {
  wrong: {
    "declared and never read": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
//                         ^^^ serial/control-line-ignored: PD4 (pin 4)
#include <avr/io.h>
static void put(uint8_t value) {
  loop_until_bit_is_set(UCSR0A, UDRE0);
  UDR0 = value;
}
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  put('M');
  for (;;) {
    put(0x40 | (PINB & 3));
    put(0);
    put(0);
  }
}
`,
    },
    "another pin of the same port is read": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
//                         ^^^ serial/control-line-ignored
#include <avr/io.h>
#define RTS_IS_ON() (!(PIND & (1 << PD5)))
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  uint8_t was = 0;
  for (;;) {
    uint8_t on = RTS_IS_ON();
    if (on && !was) UDR0 = 'M';
    was = on;
  }
}
`,
    },
    "made an input and left at that": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
//                         ^ serial/control-line-ignored
const uint8_t RTS = 4;
void setup() {
  pinMode(RTS, INPUT);
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  Serial.write('M');
  delay(1000);
}
`,
    },
    "in edgewise.json, of a class that forgot it": {
      "port.ino": `
class Port {
 public:
  Port(uint8_t rts, uint8_t button) : rts(rts), button(button) {}
  void begin() {
    pinMode(rts, INPUT);
    pinMode(button, INPUT_PULLUP);
    Serial.begin(1200, SERIAL_7N1);
    Serial.write('M');
  }
  void serve() {
    if (!digitalRead(button)) Serial.write(0x60);
  }
 private:
  uint8_t rts, button;
};
Port port(4, 5);
void setup() { port.begin(); }
void loop() { port.serve(); }
`,
      "edgewise.json": `{
  "board": { "chip": "atmega328p", "clock": "16MHz" },
  "wires": { "serial": { "uart": 0, "rts": "4",
//                                         ^^^ serial/control-line-ignored
    "report": "two-button", "shifter": "inverting" } }
}`,
    },
    "read, but the answer comes once after power-on": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
const uint8_t RTS = 4;
void setup() {
  pinMode(RTS, INPUT);
  Serial.begin(1200, SERIAL_7N1);
  while (digitalRead(RTS) == HIGH) {
  }
  Serial.write('M');
  //           ^^^ serial/control-line-ignored: once
}
void loop() {
  if (digitalRead(RTS) == LOW && digitalRead(5) == LOW) {
    byte report[3] = {0x60, 0, 0};
    Serial.write(report, 3);
  }
}
`,
    },
    "the answer before the loop": {
      "main.c": `
// @wire board attiny2313 clock=8MHz
// @wire serial uart=0 rts=PD3 report=two-button shifter=inverting
#include <avr/io.h>
static void put(uint8_t value) {
  while (!(UCSRA & (1 << UDRE)))
    ;
  UDR = value;
}
int main(void) {
  UBRRL = 160;
  UBRRH = 1;
  UCSRB = 1 << TXEN;
  UCSRC = 1 << UCSZ1;
  put(77);
  //  ^^ serial/control-line-ignored: once
  while (1) {
    if (PIND & (1 << PD3)) continue;
    put(0x40 | (PINB & 0x0F));
    put(PINB & 0x3F);
    put(0);
  }
}
`,
    },
    "DTR declared, and nothing read": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 dtr=PD5 report=two-button shifter=inverting
//                         ^^^ serial/control-line-ignored: DTR
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    UDR0 = 'M';
    while (!(UCSR0A & _BV(TXC0))) {
    }
  }
}
`,
    },
  },
  right: {
    "read in the loop": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#include <avr/io.h>
#define PORT_OF(x) PIN##x
#define LEVEL(port, bit) (PORT_OF(port) & (1 << P##port##bit))
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  uint8_t was = 0;
  for (;;) {
    uint8_t on = !LEVEL(D, 4);
    if (on && !was) UDR0 = 'M';
    was = on;
  }
}
`,
    },
    "its interrupt alone": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=2 report=two-button shifter=inverting
volatile bool asked = false;
void rtsOn() { asked = true; }
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  attachInterrupt(digitalPinToInterrupt(2), rtsOn, FALLING);
}
void loop() {
  if (asked) {
    asked = false;
    Serial.write('M');
  }
}
`,
    },
    "its pin-change interrupt": {
      "main.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 rts=PB4 report=two-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <avr/interrupt.h>
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
static volatile uint8_t moved;
ISR(PCINT0_vect) { moved = 1; }
int main(void) {
  PORTB |= _BV(PB1);
  DDRB = _BV(PB1);
  PCMSK = _BV(PCINT4);
  GIMSK = _BV(PCIE);
  sei();
  for (;;) {
    if (moved) {
      moved = 0;
      send('M');
    }
  }
}
`,
    },
    "the whole port looked at": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  uint8_t last = PIND;
  for (;;) {
    uint8_t now = PIND;
    uint8_t fell = last & ~now;
    if (fell & _BV(PD4)) UDR0 = 'M';
    last = now;
  }
}
`,
    },
    "pins in an array": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
const byte INPUTS[] = {5, 6, 4};
byte levels[3];
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  for (byte i = 0; i < 3; i++) {
    byte level = digitalRead(INPUTS[i]);
    if (i == 2 && levels[2] == HIGH && level == LOW) Serial.write('M');
    levels[i] = level;
  }
}
`,
    },
    "RTS starts the chip anew": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#include <avr/io.h>
#include <avr/wdt.h>
static void put(uint8_t value) {
  loop_until_bit_is_set(UCSR0A, UDRE0);
  UDR0 = value;
}
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  loop_until_bit_is_clear(PIND, PD4);
  put('M');
  for (;;) {
    if (PIND & _BV(PD4)) {
      wdt_enable(WDTO_15MS);
      for (;;) {
      }
    }
    put(0x40);
    put(PINB & 0x3F);
    put(0);
  }
}
`,
    },
    "no line declared: the port feeds the adapter": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button shifter=inverting
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  Serial.write('M');
}
void loop() {
  if (digitalRead(5) == LOW) Serial.write(0x60);
}
`,
    },
    "a library that may read it": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#include <avr/io.h>
int level_of(uint8_t pin);
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    if (!level_of(4)) UDR0 = 'M';
  }
}
`,
    },
    "mice that answer nothing": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=five-byte shifter=inverting
void setup() {
  Serial.begin(1200);
}
void loop() {
  Serial.write(0x87);
}
`,
    },
  },
});
