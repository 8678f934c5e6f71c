import { throughput } from "../../../../src-core/checks/serial/throughput.ts";
import { ruleTests } from "../harness.ts";

// A three-byte report takes 27 bits as 7N1, so that 1200/27 = 44.4 fit into a second at 1200 baud; four bytes take 36 bits,
// 33.3 per second (start and stop bit as in mouse(4), Linux man-pages). A mouse reports 100 times per second after a reset
// (EM84502 data sheet, section E; The PS/2 Mouse/Keyboard Protocol, "Reset Mode"), or as often as command F3 says.

/** A host by interrupt that hands over whole packets. */
const host = (rate: string, note: string) => `${note}
#define F_CPU 16000000UL
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>
static volatile uint8_t packet[4], place, whole;
ISR(INT0_vect) {
  static uint8_t bit, value;
  if (bit > 0 && bit < 9) value = value >> 1 | (PIND & 8 ? 0x80 : 0);
  if (++bit == 11) {
    bit = 0;
    packet[place] = value;
    if (++place == 3) {
      place = 0;
      whole = 1;
    }
  }
}
static void fall(void) {
  loop_until_bit_is_set(PIND, 2);
  loop_until_bit_is_clear(PIND, 2);
}
static void mouse(uint8_t value) {
  uint8_t parity = 1;
  DDRD |= 4;
  _delay_us(120);
  DDRD |= 8;
  DDRD &= ~4;
  for (uint8_t i = 0; i < 8; i++, value >>= 1) {
    fall();
    if (value & 1) DDRD &= ~8; else DDRD |= 8;
    parity ^= value & 1;
  }
  fall();
  if (parity) DDRD &= ~8; else DDRD |= 8;
  fall();
  DDRD &= ~8;
  fall();
  _delay_ms(20);
}
static void put(uint8_t value) {
  loop_until_bit_is_set(UCSR0A, UDRE0);
  UDR0 = value;
}
static void set_up(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  mouse(0xFF);
  _delay_ms(1000);
${rate}  mouse(0xF4);
  EICRA = _BV(ISC01);
  EIMSK = _BV(INT0);
  sei();
}
`;

const note = `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=external
// @wire serial uart=0 report=two-button shifter=inverting`;

const sendsAtOnce = `int main(void) {
  set_up();
  put('M');
  for (;;) {
    if (!whole) continue;
    whole = 0;
    uint8_t x = packet[1], y = -packet[2];
    put(0x40 | (packet[0] & 1) << 5 | (packet[0] & 2) << 3 | (y >> 4 & 0x0C) | x >> 6);
    put(x & 0x3F);
    put(y & 0x3F);
  }
}
`;

ruleTests(throughput, {
  wrong: {
    "a hundred reports per second, asked for": {
      "main.c":
        host(
          `  mouse(0xF3);
  mouse(100);
  //    ^^^ serial/throughput: 44.4
`,
          note,
        ) + sendsAtOnce,
    },
    sixty: {
      "main.c":
        host(
          `  mouse(0xF3);
  mouse(60);
  //    ^^ serial/throughput: 60
`,
          note,
        ) + sendsAtOnce,
    },
    "forty, of four bytes each": {
      "main.c": `${host(
        `  mouse(0xF3);
  mouse(40);
  //    ^^ serial/throughput: 33.3
`,
        note.replace("two-button", "wheel"),
      )}int main(void) {
  set_up();
  for (;;) {
    if (!whole) continue;
    whole = 0;
    uint8_t x = packet[1], y = -packet[2];
    put(0x40 | (packet[0] & 1) << 5 | (packet[0] & 2) << 3 | (y >> 4 & 0x0C) | x >> 6);
    put(x & 0x3F);
    put(y & 0x3F);
    put((packet[0] & 4) << 2);
  }
}
`,
    },
    "a rate by a function and a table": {
      "main.c":
        host(
          `  static const uint8_t steps[] = {0xF3, 200, 0xE8, 3};
  //                                    ^^^ serial/throughput: 200
  for (uint8_t i = 0; i < sizeof steps; i++) mouse(steps[i]);
`,
          note,
        ) + sendsAtOnce,
    },
    "a constant of a sample rate": {
      "main.c":
        host(
          `#define RATE 80
  mouse(0xF3);
  mouse(RATE);
  //    ^^^^ serial/throughput: 80
`,
          note,
        ) + sendsAtOnce,
    },
    "an eight-bit line, which carries less": {
      "main.c":
        host(
          `  UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
  mouse(0xF3);
  mouse(60);
  //    ^^ serial/throughput: 60
`,
          note,
        ) + sendsAtOnce.replaceAll("put(", "put(0x80 | "),
    },
  },
  right: {
    forty: {
      "main.c": host("  mouse(0xF3);\n  mouse(40);\n", note) + sendsAtOnce,
    },
    "a hundred, added up while the line is busy": {
      "main.c": `${host("  mouse(0xF3);\n  mouse(100);\n", note)}static int16_t dx, dy;
int main(void) {
  set_up();
  for (;;) {
    if (whole) {
      whole = 0;
      dx += (int8_t)packet[1];
      dy -= (int8_t)packet[2];
    }
    if ((dx || dy) && (UCSR0A & _BV(TXC0))) {
      uint8_t x = dx, y = dy;
      dx = dy = 0;
      put(0x40 | (y >> 4 & 0x0C) | x >> 6);
      put(x & 0x3F);
      put(y & 0x3F);
    }
  }
}
`,
    },
    "a faster line": {
      "main.c":
        host(
          "  UBRR0 = 103;\n  mouse(0xF3);\n  mouse(100);\n",
          note.replace("two-button", "two-button baud=9600"),
        ) + sendsAtOnce,
    },
    "a rate that nobody can see": {
      "main.c": host("  mouse(0xF3);\n  mouse(PINB);\n", note) + sendsAtOnce,
    },
    "asked for each report": {
      "main.c": `${host("  mouse(0xF3);\n  mouse(100);\n  mouse(0xF0);\n", note)}int main(void) {
  set_up();
  for (;;) {
    mouse(0xEB);
    while (!whole) {
    }
    whole = 0;
    put(0x40 | (packet[0] & 1) << 5);
    put(packet[1] & 0x3F);
    put(packet[2] & 0x3F);
  }
}
`,
    },
    "the mouse kept quiet meanwhile, so that it adds up itself": {
      "main.c": `${host("  mouse(0xF3);\n  mouse(100);\n", note)}int main(void) {
  set_up();
  for (;;) {
    if (!whole) continue;
    DDRD |= 4;
    whole = 0;
    put(0x40 | (packet[0] & 1) << 5);
    put(packet[1] & 0x3F);
    put(packet[2] & 0x3F);
    DDRD &= ~4;
  }
}
`,
    },
  },
});
