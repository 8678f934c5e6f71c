import { identWrong } from "../../../../src-core/checks/serial/ident-wrong.ts";
import { ruleTests } from "../harness.ts";

// What a mouse says when RTS comes on: 4D for the two-button layout, 4D 33 with a middle button (Serial mouse protocols
// in the text of a DOS mouse driver, "identification"; Plug and Play External COM Device Specification 1.00, B.1), and
// 4D 5A 40 00 00 00 with a wheel (EM84520 data sheet, p. 3).

ruleTests(identWrong, {
  wrong: {
    "a middle button that two-button mice have not": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#include <avr/io.h>
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
      put('M');
      put('3');
      //  ^^^ serial/ident-wrong: 4D 33
    }
    was = on;
  }
}
`,
    },
    "a small letter": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
void setup() {
  pinMode(4, INPUT);
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  while (digitalRead(4) == HIGH) {
  }
  Serial.write('m');
  //           ^^^ serial/ident-wrong: 6D
  while (digitalRead(4) == LOW) {
  }
}
`,
    },
    "half of what a wheel mouse says, from an array": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=wheel shifter=inverting
const uint8_t RTS = 4;
const byte HELLO[] = {'M', 'Z'};
//                         ^^^ serial/ident-wrong: 4D 5A 40 00 00 00
bool wasOn = false;
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  bool on = digitalRead(RTS) == LOW;
  if (on && !wasOn) {
    Serial.write(HELLO, sizeof HELLO);
  }
  wasOn = on;
}
`,
    },
    "the middle button forgotten, by interrupt": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=middle-button shifter=inverting
#include <avr/io.h>
#include <avr/interrupt.h>
#define ID 'M'
static volatile uint8_t asked;
ISR(PCINT2_vect) {
  if (!(PIND & _BV(PD4))) asked = 1;
}
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  PCMSK2 = _BV(PCINT20);
  PCICR = _BV(PCIE2);
  sei();
  for (;;) {
    if (asked) {
      asked = 0;
      UDR0 = ID;
      //     ^^ serial/ident-wrong: 4D 33
    }
  }
}
`,
    },
    "M and 2, whatever a handler sends behind them": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PC1 report=middle-button shifter=inverting
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint8_t text[2], place, length;
ISR(USART_UDRE_vect) {
  if (place < length) UDR0 = text[place++];
  else UCSR0B &= ~_BV(UDRIE0);
}
int main(void) {
  UBRR0 = 832;
  UCSR0C = _BV(UCSZ01);
  UCSR0B = _BV(TXEN0);
  sei();
  for (;;) {
    loop_until_bit_is_clear(PINC, PC1);
    UDR0 = 'M';
    UDR0 = '2';
    //     ^^^ serial/ident-wrong: 4D 33
    text[0] = 0x20;
    place = 0;
    length = 1;
    UCSR0B |= _BV(UDRIE0);
    loop_until_bit_is_set(PINC, PC1);
  }
}
`,
    },
    "a text of the wrong mouse": {
      "adapter.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=9 rts=7 report=middle-button shifter=inverting
#include <SoftwareSerial.h>
SoftwareSerial pc(8, 9);
#define RTS_PIN 7
void setup() {
  pc.begin(1200);
}
void identify() {
  pc.print("MZ");
  //       ^^^^ serial/ident-wrong: 4D 33
}
void loop() {
  static byte last = HIGH;
  byte level = digitalRead(RTS_PIN);
  if (level == LOW && last == HIGH) {
    identify();
  }
  last = level;
}
`,
    },
    "bit by bit from a table": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 rts=PB4 report=middle-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static const uint8_t hello[2] = {'M', '2'};
//                                    ^^^ serial/ident-wrong: 4D 33
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
    for (uint8_t i = 0; i < 2; i++) {
      send(hello[i]);
    }
    loop_until_bit_is_set(PINB, PB4);
  }
}
`,
    },
    "three letters by a member function": {
      "port.ino": `
// @wire board atmega32u4 clock=16MHz
// @wire serial uart=1 rts=4 report=middle-button shifter=inverting
class Port {
 public:
  explicit Port(uint8_t rts) : rts(rts) {}
  void begin() { Serial1.begin(1200, SERIAL_7N1); }
  void serve() {
    bool on = !digitalRead(rts);
    if (on != was && on) {
      Serial1.write('M');
      Serial1.write('S');
      //            ^^^ serial/ident-wrong: 4D 33
      Serial1.write('3');
    }
    was = on;
  }
 private:
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
    "M and 3": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=middle-button shifter=inverting
#include <avr/io.h>
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
      put('M');
      put('3');
    }
    was = on;
  }
}
`,
    },
    "M with its top bit set, as eight data bits": {
      "main.c": `
// @wire board atmega8 clock=8MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#include <avr/io.h>
int main(void) {
  UBRRL = 160;
  UBRRH = 1;
  UCSRB = _BV(TXEN);
  UCSRC = _BV(URSEL) | _BV(UCSZ1) | _BV(UCSZ0);
  for (;;) {
    while (PIND & _BV(PD4)) {
    }
    UDR = 'M' | 0x80;
    while (!(PIND & _BV(PD4))) {
    }
  }
}
`,
    },
    "the whole of a wheel mouse's": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=wheel shifter=inverting
const uint8_t RTS = 4;
const byte HELLO[] = {'M', 'Z', '@', 0, 0, 0};
bool wasOn = false;
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  bool on = digitalRead(RTS) == LOW;
  if (on && !wasOn) {
    Serial.write(HELLO, sizeof HELLO);
  }
  wasOn = on;
}
`,
    },
    // Plug and Play External COM Device Specification 1.00, 3.1: the id string follows M, from 28 or 08 on.
    "M and a Plug and Play id": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  while (digitalRead(4) == HIGH) {
  }
  Serial.write('M');
  Serial.print("(!$FRY0001)");
  while (digitalRead(4) == LOW) {
  }
}
`,
    },
    "a 3 that hangs on a switch": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=middle-button shifter=inverting
#include <avr/io.h>
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
    put('M');
    if (PINB & 1) put('3');
    loop_until_bit_is_set(PIND, PD4);
  }
}
`,
    },
    "three identifications, one of them the right one": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=wheel shifter=inverting
byte mode;
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  mode = PINB & 3;
}
void hello() {
  switch (mode) {
    case 0:
      Serial.write('M');
      break;
    case 1:
      Serial.write("M3");
      break;
    default:
      Serial.write("MZ@");
      Serial.write(0);
      Serial.write(0);
      Serial.write(0);
      break;
  }
}
void loop() {
  while (digitalRead(4)) {
  }
  hello();
  while (!digitalRead(4)) {
  }
}
`,
    },
    "an M whose rest goes out by the handler of the interrupt at the end of each byte": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PC1 report=middle-button shifter=inverting
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint8_t text[4], place, length, called;
ISR(USART_TX_vect) {
  if (place < length) UDR0 = text[place++];
  else length = 0;
}
ISR(PCINT1_vect) {
  if (!(PINC & _BV(PC1))) called = 1;
}
static void begin(uint8_t count) {
  place = 1;
  length = count;
  UDR0 = text[0];
}
int main(void) {
  UBRR0 = 832;
  UCSR0C = _BV(UCSZ01);
  UCSR0B = _BV(TXEN0) | _BV(TXCIE0);
  PCICR = _BV(PCIE1);
  PCMSK1 = _BV(PCINT9);
  sei();
  for (;;) {
    if (called && !length) {
      called = 0;
      text[0] = 'M';
      text[1] = '3';
      begin(2);
    }
  }
}
`,
    },
    // mouse(4), Linux man-pages, and the manual of gpm: mice with the five-byte layout send nothing.
    "a layout whose mice say nothing": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=five-byte shifter=inverting
void setup() {
  Serial.begin(1200, SERIAL_8N1);
}
void loop() {
  Serial.write(0x87);
  Serial.write(0);
  Serial.write(0);
  Serial.write(0);
  Serial.write(0);
}
`,
    },
    "an empty report once RTS is on, and M by way of a queue": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#include <avr/io.h>
static uint8_t queue[8];
static uint8_t first, length;
static void put(uint8_t value) { queue[(first + length++) & 7] = value; }
static void pump(void) {
  if (length && (UCSR0A & _BV(UDRE0))) {
    UDR0 = queue[first++ & 7];
    length--;
  }
}
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  uint8_t was = 0;
  for (;;) {
    uint8_t on = !(PIND & _BV(PD4));
    if (on && !was) {
      put('M');
      UDR0 = 0x40;
      UDR0 = 0x00;
      UDR0 = 0x00;
    }
    was = on;
    pump();
  }
}
`,
    },
  },
});
