import { expect, it } from "vitest";
import { lineDrivenHigh } from "../../../../src-core/checks/ps2/line-driven-high.ts";
import { findingsIn, ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// Open-collector lines, only ever pulled low: The PS/2 Mouse/Keyboard Protocol (2003), Electrical Interface; Technical
// Reference, model 560/560E notebook, p. 2-4; SC84502 mouse controller data sheet, AC table, note 3. A pin of an AVR
// drives high while its bits in DDRx and PORTx are both 1: ATmega328P datasheet (7810C), Table 13-1.

const enable = `int main(void) {
  command(0xF4);
${listens}}
`;
const enableSketch = `void setup() {
  command(0xF4);
}
void loop() {
  reply();
}
`;

const lifted = pasted(
  {},
  `#define LIFT(line) (GLUE(PORT, line##_PORT) |= MASK(line), DIR(line) |= MASK(line))
int main(void) {
  LIFT(DATA);
//^^^^^^^^^^ ps2/line-driven-high: the data line is driven high
  _delay_ms(5);
  LIFT(CLOCK);
  _delay_ms(5);
  LET_GO(CLOCK);
  LET_GO(DATA);
  PORTB &= ~(MASK(CLOCK) | MASK(DATA));
  command(0xF4);
${listens}}
`,
);

ruleTests(lineDrivenHigh, {
  wrong: {
    "letting go by writing a one": {
      "main.c": registers({}, enable).replace(
        "static void release(uint8_t bit) { DDRD &= ~(1 << bit); }\n",
        `static void release(uint8_t bit) { PORTD |= (1 << bit); }
//                                 ^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: the clock line is driven high
//                                 ^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: the data line is driven high
`,
      ),
    },
    "pins that stay outputs in a sketch": {
      "mouse.ino": `// @wire ps2 clock=2 data=3 pullups=external
void sendByte(byte value) {
  digitalWrite(2, LOW);
  delayMicroseconds(120);
  digitalWrite(3, LOW);
  digitalWrite(2, HIGH);
//^^^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: the clock line is driven high
  pinMode(2, INPUT);
  for (int i = 0; i < 8; i++) {
    while (digitalRead(2)) ;
    digitalWrite(3, (value >> i) & 1);
//  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: the data line is driven high
    while (!digitalRead(2)) ;
  }
  pinMode(2, OUTPUT);
}
void setup() {
  digitalWrite(2, LOW);
  pinMode(2, OUTPUT);
  pinMode(3, OUTPUT);
  sendByte(0xF4);
}
void loop() {}
`.replace(
        "  digitalWrite(2, HIGH);\n//^^^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: the clock line is driven high\n  pinMode(2, INPUT);\n",
        "  pinMode(2, INPUT);\n",
      ),
    },
    "the bit to send put on the line": {
      "mouse.ino": sketch({}, enableSketch).replace(
        "    if (bitRead(data, i)) {\n      letGo(DAT);\n      parity ^= 1;\n    } else {\n      pullLow(DAT);\n    }\n",
        `    digitalWrite(DAT, bitRead(data, i));
//  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: the data line is driven high
`,
      ),
    },
    "a class that writes HIGH": {
      "mouse.ino": classBased({}, enableSketch).replace(
        "  void high(uint8_t pin) { pinMode(pin, INPUT); }\n",
        `  void high(uint8_t pin) { digitalWrite(pin, HIGH); pinMode(pin, OUTPUT); }
  //                                                ^^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: clock line
  //                                                ^^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: data line
`,
      ),
    },
    "a handler that drives data": {
      "main.c": interruptDriven({}, `int main(void) {\n  sei();\n  command(0xF4);\n${listens}}\n`)
        .replace(
          "#define DATA_RELEASE() do { DDRD &= ~_BV(3); } while (0)",
          "#define DATA_RELEASE() do { PORTD |= _BV(3); DDRD |= _BV(3); } while (0)",
        )
        .replace(
          "      if (shift & 1) {\n        DATA_RELEASE();\n",
          "      if (shift & 1) {\n        DATA_RELEASE();\n//      ^^^^^^^^^^^^^^ ps2/line-driven-high: the data line is driven high\n",
        ),
    },
    "a macro with pasted names that writes a one, told at its first use": { "tiny.c": lifted },
    "statements handed to a macro are each told": {
      "tiny.c": pasted(
        {},
        `#define TWICE(what) do { what; _delay_ms(5); what; } while (0)
int main(void) {
  PORTB |= _BV(DATA_BIT) | _BV(CLOCK_BIT);
  TWICE(DDRB |= _BV(DATA_BIT));
//      ^^^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: the data line is driven high
  TWICE(DDRB |= _BV(CLOCK_BIT));
//      ^^^^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: the clock line is driven high
  LET_GO(CLOCK);
  LET_GO(DATA);
  PORTB &= ~(MASK(CLOCK) | MASK(DATA));
  command(0xF4);
${listens}}
`,
      ),
    },
    "macros with pasted names, the latch left at one": {
      "tiny.c": pasted(
        {},
        `int main(void) {
  PORTB |= _BV(DATA_BIT);
  DDRB |= _BV(DATA_BIT);
//^^^^^^^^^^^^^^^^^^^^^ ps2/line-driven-high: the data line is driven high
  _delay_ms(5);
  DDRB &= ~_BV(DATA_BIT);
  PORTB &= ~_BV(DATA_BIT);
  command(0xF4);
${listens}}
`,
      ),
    },
    "whole registers written": {
      "main.c": `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=PD2 data=PD3 pullups=external
#include <avr/io.h>
#include <util/delay.h>
int main(void) {
  PORTD = 0x0C;
  DDRD = 0x0C;
//^^^^^^^^^^^ ps2/line-driven-high: the clock line is driven high
//^^^^^^^^^^^ ps2/line-driven-high: the data line is driven high
  for (;;) {
    _delay_ms(1);
  }
}
`,
    },
    "a toggle by the input register": {
      "main.c": `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=PD2 data=PD3 pullups=external
#include <avr/io.h>
#include <util/delay.h>
int main(void) {
  DDRD = _BV(PD2);
  for (;;) {
    _delay_us(120);
    PIND = _BV(PD2);
//  ^^^^^^^^^^^^^^^ ps2/line-driven-high: the clock line is driven high
    _delay_ms(10);
    PIND = _BV(PD2);
  }
}
`,
    },
  },
  right: {
    "direction alone": { "tiny.c": pasted({}, enable) },
    "port registers": { "main.c": registers({}, enable) },
    "a sketch with pinMode": { "mouse.ino": sketch({}, enableSketch) },
    "a class": { "mouse.ino": classBased({}, enableSketch) },
    "a handler that sends": {
      "main.c": interruptDriven({}, `int main(void) {\n  sei();\n  command(0xF4);\n${listens}}\n`),
    },
    "pull-up first, then input: two instructions": {
      "main.c": registers(
        {
          notes: "// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD2 data=PD3 pullups=internal\n",
        },
        enable,
      ).replace("{ DDRD &= ~(1 << bit); }", "{ PORTD |= (1 << bit); DDRD &= ~(1 << bit); }"),
    },
    "the old way of a pull-up in a sketch": {
      "mouse.ino": sketch({ notes: "// @wire ps2 clock=2 data=3 pullups=internal\n" }, enableSketch).replace(
        "  pinMode(pin, INPUT);\n",
        "  digitalWrite(pin, HIGH);\n  pinMode(pin, INPUT);\n",
      ),
    },
    "output first, then low": {
      "mouse.ino": sketch({ notes: "// @wire ps2 clock=2 data=3 pullups=internal\n" }, enableSketch)
        .replace(
          "  digitalWrite(pin, LOW);\n  pinMode(pin, OUTPUT);\n",
          "  pinMode(pin, OUTPUT);\n  digitalWrite(pin, LOW);\n",
        )
        .replace("  pinMode(pin, INPUT);\n", "  pinMode(pin, INPUT_PULLUP);\n"),
    },
    "other pins of the port are driven": {
      "main.c": registers(
        {},
        `int main(void) {
  DDRD |= _BV(PD1) | _BV(PD5);
  PORTD |= _BV(PD1) | _BV(PD5);
  command(0xF4);
${listens}}
`,
      ),
    },
    "a digitalWrite HIGH on an input: its pull-up": {
      "mouse.ino": sketch(
        { notes: "// @wire ps2 clock=2 data=3 pullups=internal\n" },
        `void setup() {
  digitalWrite(CLK, HIGH);
  digitalWrite(DAT, HIGH);
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "a level that is always low": {
      "mouse.ino": sketch({}, enableSketch).replace(
        "void pullLow(int pin) {\n  digitalWrite(pin, LOW);\n",
        "void pullLow(int pin) {\n  bool level = false;\n  digitalWrite(pin, level);\n",
      ),
    },
  },
});

it("names the macro that drives a line, and where else it does", () => {
  const [{ related } = { related: [] }, ...others] = findingsIn({ "tiny.c": lifted }, [lineDrivenHigh]);
  expect(others).toEqual([]);
  expect(related.map(({ span }) => lifted.slice(span.start, span.end))).toEqual([
    "PB0",
    "PB2",
    "LIFT",
    "LIFT(CLOCK)",
  ]);
  expect(related.at(-1)?.message).toContain("clock line");
});
