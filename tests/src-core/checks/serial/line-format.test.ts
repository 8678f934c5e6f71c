import { lineFormat } from "../../../../src-core/checks/serial/line-format.ts";
import { ruleTests } from "../harness.ts";

// What a two-button report wants: 7 data bits, no parity: mouse(4), Linux man-pages. Which frames are the same on
// the wire (7N1, 7N2, 8 data bits with the top bit 1): Plug and Play External COM Device Specification 1.00,
// section 2.2. Five-byte: 8 data bits, no parity: mouse(4). Bits of UCSRnC: ATmega328P datasheet, USART Register
// Description.

ruleTests(lineFormat, {
  wrong: {
    "eight data bits in the register": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
  //       ^^^^^^^^^^^^^^^^^^^^^^^^^ serial/line-format: 8N1
  for (;;) {
    UDR0 = 'M';
  }
}
`,
    },
    // ATmega8 datasheet 2486, Accessing UBRRH/UCSRC Registers: URSEL is 1 in what is meant for UCSRC.
    "the register that shares its address written without URSEL": {
      "main.c": `
// @wire board atmega8 clock=8MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRRH = (F_CPU / 16 / 1200 - 1) >> 8;
  UBRRL = (F_CPU / 16 / 1200 - 1) & 0xFF;
  UCSRB = _BV(TXEN);
  UCSRC = _BV(UCSZ1);
  //      ^^^^^^^^^^ serial/line-format: UCSRC is written without URSEL, so UBRRH takes the byte and bytes go out as 8N1
  for (;;) {
    UDR = 'M';
  }
}
`,
    },
    "eight data bits in the register that shares its address": {
      "main.c": `
// @wire board atmega32 clock=8MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
void uart_init(uint16_t ubrr) {
  UBRRH = (unsigned char)(ubrr >> 8);
  UBRRL = (unsigned char)ubrr;
  UCSRB = (1 << TXEN);
  UCSRC = (1 << URSEL) | (3 << UCSZ0);
  //      ^^^^^^^^^^^^^^^^^^^^^^^^^^^ serial/line-format: bytes go out as 8N1
}
int main(void) {
  uart_init(F_CPU / 16 / 1200 - 1);
  for (;;) {
    UDR = 'M';
  }
}
`,
    },
    // The reset value of UCSRnC is 0x06: 8N1.
    "the format register left as it is after reset": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  //      ^^^ serial/line-format: 8N1
  UCSR0B = _BV(TXEN0);
  for (;;) {
    UDR0 = 0x40;
  }
}
`,
    },
    "even parity": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=middle-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = 1 << TXEN0;
  UCSR0C = (1 << UPM01) | (1 << UCSZ01);
  //       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ serial/line-format: 7E1
  for (;;) {
    UDR0 = 'M';
  }
}
`,
    },
    "the serial class of the core, whose own format is 8N1": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
void setup() {
  Serial.begin(1200);
  //           ^^^^ serial/line-format: 8N1
}
void loop() {
  Serial.write('M');
}
`,
    },
    "the serial class of the core with a format that does not fit": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=wheel
void setup() {
  Serial.begin(1200, SERIAL_7E1);
  //                 ^^^^^^^^^^ serial/line-format: 7E1
}
void loop() {
  Serial.write('M');
}
`,
    },
    "seven bits for the layout that needs eight": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=five-byte
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  //                 ^^^^^^^^^^ serial/line-format: 7N1
}
void loop() {
  Serial.write(0x87);
}
`,
    },
    "six data bits by a single bit": {
      "uart.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 line=7N1
#include <avr/io.h>
void uart_init(void) {
  UBRR0 = 832;
  UCSR0B = (1 << TXEN0);
  UCSR0C = (1 << UCSZ00);
  //        ^^^^^^^^^^^ serial/line-format: 6N1
}
int main(void) {
  uart_init();
  for (;;) {
    UDR0 = 'M';
  }
}
`,
    },
    "software serial, which knows 8N1 only": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=8 report=two-button
#include <SoftwareSerial.h>
SoftwareSerial pc(7, 8);
void setup() {
  pc.begin(1200);
  //       ^^^^ serial/line-format: 8N1
}
void loop() {
  pc.write('M');
}
`,
    },
  },
  right: {
    "seven data bits in the register that shares its address, before and after the divisor": {
      "main.c": `
// @wire board atmega16 clock=8MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UCSRC = _BV(URSEL) | _BV(UCSZ1);
  UBRRH = (F_CPU / 16 / 1200 - 1) >> 8;
  UBRRL = (F_CPU / 16 / 1200 - 1) & 0xFF;
  UCSRB = _BV(TXEN);
  for (;;) {
    UDR = 'M';
  }
}
`,
    },
    "seven data bits": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    UDR0 = 'M';
  }
}
`,
    },
    "seven data bits and two stop bits": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=wheel
void setup() {
  Serial.begin(1200, SERIAL_7N2);
}
void loop() {
  Serial.write('M');
}
`,
    },
    "seven bits reached by clearing one": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = (1 << TXEN0);
  UCSR0C &= ~(1 << UCSZ00);
  for (;;) {
    UDR0 = 'M';
  }
}
`,
    },
    "eight bits, with the top bit set in every byte": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
static void send(uint8_t value) {
  while (!(UCSR0A & _BV(UDRE0))) {
  }
  UDR0 = value | 0x80;
}
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
  for (;;) {
    send('M');
  }
}
`,
    },
    "eight bits for the five-byte layout": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=five-byte
void setup() {
  Serial.begin(1200);
}
void loop() {
  Serial.write(0x87);
}
`,
    },
    "a layout that nobody said": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  UBRR0 = 103;
  UCSR0B = _BV(TXEN0);
  for (;;) {
    UDR0 = 'x';
  }
}
`,
    },
  },
});
