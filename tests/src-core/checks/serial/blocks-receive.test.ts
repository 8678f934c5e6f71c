import { registerHost } from "../../../../src-core/checks/ps2/frames.ts";
import { blocksReceive } from "../../../../src-core/checks/serial/blocks-receive.ts";
import { ruleTests } from "../harness.ts";

// A three-byte report lasts 3 * 9 / 1200 s = 22.5 ms as 7N1 (start and stop bit as in mouse(4), Linux man-pages). A mouse reports
// 100 times per second after a reset, one report each 10 ms (EM84502 data sheet, section E), or as often as F3 says. Its
// clock has a period of 60 to 100 us (The PS/2 Mouse/Keyboard Protocol): a byte of 7.5 ms with interrupts off is deaf to
// all but one of its edges, for a chip keeps one flag for each interrupt (ATmega328P datasheet 8271D, External Interrupts).

const uart = `// @wire serial uart=0 report=two-button shifter=inverting
static void put(uint8_t value) {
  while (!(UCSR0A & _BV(UDRE0))) {
  }
  UDR0 = value;
}
static void line(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
}
`;

const pin = (before = "", behind = "") => `// @wire serial tx=PB1 report=two-button shifter=inverting
#include <avr/interrupt.h>
static void bits(uint8_t value) {
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
static void put(uint8_t value) {
${before}  bits(value);
${behind}}
static void line(void) {
  PORTB |= _BV(PB1);
  DDRB |= _BV(PB1);
}
`;

const interrupt = `static volatile uint8_t packet[3], place, whole;
ISR(INT0_vect) {
  static uint8_t bit, value;
  uint8_t level = PIND & _BV(PD3) ? 1 : 0;
  if (bit > 0 && bit < 9) value = value >> 1 | level << 7;
  if (++bit < 11) return;
  bit = 0;
  packet[place] = value;
  if (++place == 3) {
    place = 0;
    whole = 1;
  }
}
int main(void) {
  line();
  command(0xF3);
  command(40);
  command(0xF4);
  EICRA = _BV(ISC01);
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    if (!whole) continue;
    whole = 0;
    put(0x40 | (packet[0] & 1) << 5);
    put(packet[1] & 0x3F);
    put(packet[2] & 0x3F);
  }
}
`;

/** Interrupts are kept out as long as an object of it lives (C++11 6.6p2: it ends however its block is left). */
const guard = `class Quiet {
 public:
  Quiet() : status(SREG) { cli(); }
  ~Quiet() { SREG = status; }
 private:
  uint8_t status;
};
`;

const polled = (setUp: string, sending: string) => `int main(void) {
  line();
${setUp}  command(0xF4);
  for (;;) {
    int16_t head = ps2_read();
    int16_t x = ps2_read();
    int16_t y = ps2_read();
    if (head < 0 || x < 0 || y < 0) continue;
${sending}  }
}
`;

const sends = (under: string) => `    put(0x40 | (head & 1) << 5);
${under}    put(x & 0x3F);
    put(-y & 0x3F);
`;

const here = "    //  ^^^^^^^^^^^^^^^^^^^^^^ serial/blocks-receive: 22.5 ms\n";

ruleTests(blocksReceive, {
  wrong: {
    "asked for a hundred reports, and waits for the UART": {
      "main.c": registerHost(100, uart + polled("  command(0xF3);\n  command(100);\n", sends(here))),
    },
    "as many as after a reset": {
      "main.c": registerHost(100, uart + polled("", sends(here))),
    },
    "bit by bit, sixty reports": {
      "main.c": registerHost(100, pin() + polled("  command(0xF3);\n  command(60);\n", sends(here))),
    },
    "interrupts off for each byte": {
      "main.c": registerHost(
        100,
        pin("  cli();\n//^^^^^ serial/blocks-receive: 7.5 ms\n", "  sei();\n") + interrupt,
      ),
    },
    "a sketch that keeps interrupts out": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=external
// @wire serial tx=8 report=two-button shifter=inverting
const byte TX = 8;
volatile byte bits = 0;
volatile word frame = 0;
void clockFell() {
  bitWrite(frame, bits, digitalRead(3));
  bits++;
}
void level(bool mark) {
  digitalWrite(TX, mark);
  delayMicroseconds(833);
}
void put(byte value) {
  noInterrupts();
//^^^^^^^^^^^^^^ serial/blocks-receive: 7.5 ms
  level(LOW);
  for (byte mask = 1; mask < 0x80; mask <<= 1) level(value & mask);
  level(HIGH);
  interrupts();
}
void setup() {
  digitalWrite(TX, HIGH);
  pinMode(TX, OUTPUT);
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}
void loop() {
  if (bits < 11) return;
  bits = 0;
  put(frame >> 1);
}
`,
    },
    "the status register kept": {
      "main.c": registerHost(
        100,
        pin(
          "  uint8_t status = SREG;\n  cli();\n//^^^^^ serial/blocks-receive: 7.5 ms\n",
          "  SREG = status;\n",
        ) + interrupt,
      ),
    },
    "a block of its own for each byte": {
      "main.c": registerHost(
        100,
        `#include <util/atomic.h>
${pin(
  "  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {\n//^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ serial/blocks-receive: 7.5 ms\n",
  "  }\n",
)}${interrupt}`,
      ),
    },
    "a block that a return leaves": {
      "main.c": registerHost(
        100,
        `#include <util/atomic.h>
${pin(
  `  ATOMIC_BLOCK(ATOMIC_FORCEON) {
//^^^^^^^^^^^^^^^^^^^^^^^^^^^^ serial/blocks-receive: 7.5 ms
    if (value & 0x40) {
      bits(value);
      return;
    }
  }
`,
)}${interrupt}`,
      ),
    },
    "an object that keeps interrupts out": {
      "main.cpp": registerHost(
        100,
        pin("  Quiet quiet;\n//^^^^^^^^^^^^ serial/blocks-receive: 7.5 ms\n").replace(
          "static void put",
          `${guard}static void put`,
        ) + interrupt,
      ),
    },
  },
  right: {
    "a block for each bit, which lasts as long as the pin takes": {
      "main.c": registerHost(
        100,
        `#include <util/atomic.h>
${pin().replace("    if (value & 1) {", "    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)\n    if (value & 1) {")}${interrupt}`,
      ),
    },
    "a block in front of the byte, left by a return where there is none": {
      "main.c": registerHost(
        100,
        `#include <util/atomic.h>
static volatile uint8_t waiting, next;
static uint8_t taken(void) {
  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
    if (!waiting) return 0;
    waiting = 0;
    return next;
  }
  return 0;
}
${pin("  value |= taken();\n")}${interrupt}`,
      ),
    },
    "an object that has ended before the byte goes out": {
      "main.cpp": registerHost(
        100,
        pin("  {\n    Quiet quiet;\n    value |= whole;\n  }\n")
          .replace("static void put", `static volatile uint8_t whole;\n${guard}static void put`)
          .concat(interrupt.replace(", whole", "")),
      ),
    },
    "forty reports, each over before the next": {
      "main.c": registerHost(100, uart + polled("  command(0xF3);\n  command(40);\n", sends(""))),
    },
    "the mouse kept quiet while a report goes out": {
      "main.c": registerHost(100, uart + polled("", `    pull_low(PD2);\n${sends("")}    release(PD2);\n`)),
    },
    "asked for each report": {
      "main.c": registerHost(
        100,
        uart +
          polled("  command(0xF0);\n", sends("")).replace("for (;;) {", "for (;;) {\n    command(0xEB);"),
      ),
    },
    "bits with interrupts on": {
      "main.c": registerHost(100, pin() + interrupt),
    },
    "interrupts off, and the clock held": {
      "main.c": registerHost(
        100,
        pin("  pull_low(PD2);\n  cli();\n", "  sei();\n  release(PD2);\n") + interrupt,
      ),
    },
    "heard by interrupt, sent by the UART": {
      "main.c": registerHost(100, `#include <avr/interrupt.h>\n${uart}${interrupt}`),
    },
  },
});
