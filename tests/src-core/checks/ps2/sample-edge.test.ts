import { sampleEdge } from "../../../../src-core/checks/ps2/sample-edge.ts";
import { ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// The host reads data while the clock is low, after its falling edge, and changes data while the clock is low: The PS/2
// Mouse/Keyboard Protocol (2003), Device-to-Host and Host-to-Device; TouchPad Interfacing Guide, 3.2.2. ISC01 alone is
// the falling edge, with ISC00 the rising one: ATmega328P data sheet, EICRA.

const notes = "// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD2 data=PD3 pullups=external\n";
const sketchNotes = "// @wire ps2 clock=2 data=3 pullups=external\n";
const enable = `int main(void) {
  command(0xF4);
${listens}}
`;
const enableSketch = "void setup() { command(0xF4); }\nvoid loop() { reply(); }\n";

function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`no ${from} in the snippet`);
  return text.replace(from, to);
}

const attached = (mode: string, carets = ""): string => `${sketchNotes}const byte CLK = 2, DAT = 3;
volatile byte bits, shift;
void tick() {
  shift = shift >> 1 | (digitalRead(DAT) ? 0x80 : 0);
  bits++;
}
void setup() {
  attachInterrupt(digitalPinToInterrupt(CLK), tick, ${mode});
${carets}}
void loop() {}
`;
const vector = (setUp: string, handler: string): string => `${notes}#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint8_t bits, shift;
${handler}
int main(void) {
${setUp}  sei();
  for (;;) {
  }
}
`;
const int0 = `ISR(INT0_vect) {
  shift = shift >> 1 | (PIND & _BV(PD3) ? 0x80 : 0);
  bits++;
}
`;

ruleTests(sampleEdge, {
  wrong: {
    "a handler of the rising edge, attached": {
      "mouse.ino": attached(
        "RISING",
        "  //                                                ^^^^^^ ps2/sample-edge: rises\n",
      ),
    },
    "a handler of both edges that does not look which": {
      "mouse.ino": attached(
        "CHANGE",
        "  //                                                ^^^^^^ ps2/sample-edge: both\n",
      ),
    },
    "the bits of the rising edge": {
      "main.c": vector(
        "  EICRA = _BV(ISC01) | _BV(ISC00);\n//        ^^^^^^^^^^^^^^^^^^^^^^^ ps2/sample-edge: rises\n  EIMSK = _BV(INT0);\n",
        int0,
      ),
    },
    "the bits of the rising edge, one by one": {
      "tiny.c": `/* @wire board attiny85 clock=8MHz
   @wire ps2 clock=PB2 data=PB0 pullups=external */
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint8_t value;
ISR(INT0_vect) { value = value << 1 | (PINB & 1); }
int main(void) {
  MCUCR |= 3 << ISC00;
  //       ^^^^^^^^^^ ps2/sample-edge: rises
  GIMSK |= 1 << INT0;
  sei();
  for (;;) {
  }
}
`,
    },
    "a pin-change handler that goes on while the clock is high": {
      "main.c": vector(
        "  PCMSK2 = _BV(PCINT18);\n  PCICR = _BV(PCIE2);\n",
        `ISR(PCINT2_vect) {
  if (!(PIND & _BV(PD2))) {
    return;
  }
  shift = shift >> 1 | (PIND & _BV(PD3) ? 0x80 : 0);
  //                    ^^^^ ps2/sample-edge: high
  bits++;
}
`,
      ),
    },
    "a reader that waits until the clock has risen": {
      "main.c": changed(
        changed(
          registers({}, enable),
          "uint8_t reply(void) {",
          `static void clock_rises(void) {
  loop_until_bit_is_clear(PIND, CLOCK);
  loop_until_bit_is_set(PIND, CLOCK);
}

uint8_t reply(void) {`,
        ),
        "    clock_falls();\n    value >>= 1;\n    if (PIND & (1 << DATA)) {\n",
        "    clock_rises();\n    value >>= 1;\n    if (PIND & (1 << DATA)) {\n    //  ^^^^ ps2/sample-edge: rose\n",
      ),
    },
    "a reader in a sketch": {
      "mouse.ino": changed(
        sketch({}, enableSketch),
        "    waitFall();\n    bitWrite(value, i, digitalRead(DAT));\n",
        "    while (digitalRead(CLK) == HIGH) ;\n    while (digitalRead(CLK) == LOW) ;\n    bitWrite(value, i, digitalRead(DAT));\n    //                 ^^^^^^^^^^^^^^^^ ps2/sample-edge: read\n",
      ),
    },
    "a level that is compared with zero": {
      "mouse.ino": changed(
        sketch({}, enableSketch),
        "    waitFall();\n    bitWrite(value, i, digitalRead(DAT));\n",
        "    while (digitalRead(CLK) > LOW) ;\n    for (;;) {\n      if (0 < digitalRead(CLK)) break;\n    }\n    bitWrite(value, i, digitalRead(DAT));\n    //                 ^^^^^^^^^^^^^^^^ ps2/sample-edge: read\n",
      ),
    },
    "a sender that changes data when the clock has risen": {
      "main.c": changed(
        registers({}, enable),
        "    clock_falls();\n    put(value & 1);\n",
        "    loop_until_bit_is_clear(PIND, CLOCK);\n    loop_until_bit_is_set(PIND, CLOCK);\n    put(value & 1);\n  //^^^^^^^^^^^^^^ ps2/sample-edge: changed\n",
      ),
    },
    "a class with a wait that gives up": {
      "mouse.ino": changed(
        changed(
          classBased({}, enableSketch),
          "      fall();\n      value |= digitalRead(data_) << i;\n",
          "      until(LOW);\n      until(HIGH);\n      value |= digitalRead(data_) << i;\n      //       ^^^^^^^^^^^^^^^^^^ ps2/sample-edge\n",
        ),
        "  void fall() {",
        "  bool until(uint8_t level) {\n    for (unsigned n = 0; n < 5000; ++n) {\n      if (digitalRead(clock_) == level) return true;\n    }\n    return false;\n  }\n  void fall() {",
      ),
    },
  },
  right: {
    "waits until the level is no longer above zero": {
      "mouse.ino": changed(
        sketch({}, enableSketch),
        "    waitFall();\n    bitWrite(value, i, digitalRead(DAT));\n",
        "    while (digitalRead(CLK) == LOW) ;\n    while (0 < digitalRead(CLK)) ;\n    bitWrite(value, i, digitalRead(DAT));\n",
      ),
    },
    "a handler of the falling edge, attached": { "mouse.ino": attached("FALLING") },
    "the bits of the falling edge": {
      "main.c": vector("  EICRA = _BV(ISC01);\n  EIMSK = _BV(INT0);\n", int0),
    },
    "another handler has the rising edge": {
      "main.c": vector(
        "  EICRA = _BV(ISC01) | _BV(ISC11) | _BV(ISC10);\n  EIMSK = _BV(INT0) | _BV(INT1);\n",
        `${int0}ISR(INT1_vect) {
  PORTB ^= 1;
}
`,
      ),
    },
    "a pin-change handler that goes on while the clock is low": {
      "main.c": vector(
        "  PCMSK2 = _BV(PCINT18);\n  PCICR = _BV(PCIE2);\n",
        `ISR(PCINT2_vect) {
  if (PIND & _BV(PD2)) {
    return;
  }
  shift = shift >> 1 | (PIND & _BV(PD3) ? 0x80 : 0);
  bits++;
}
`,
      ),
    },
    "both edges, all pins taken at once": {
      "main.c": vector(
        "  PCMSK2 = _BV(PCINT18);\n  PCICR = _BV(PCIE2);\n",
        `ISR(PCINT2_vect) {
  uint8_t pins = PIND;
  if (!(pins & _BV(PD2))) {
    shift = shift >> 1 | (pins & _BV(PD3) ? 0x80 : 0);
    bits++;
  }
}
`,
      ),
    },
    "the edge is turned over for sending": {
      "main.c": vector(
        "  EICRA = _BV(ISC01);\n  EIMSK = _BV(INT0);\n  EICRA = _BV(ISC01) | _BV(ISC00);\n",
        int0,
      ),
    },
    "polled, registers": { "main.c": registers({}, enable) },
    "polled, a sketch": { "mouse.ino": sketch({}, enableSketch) },
    "polled, macros": { "tiny.c": pasted({}, enable) },
    "polled, a class": { "mouse.ino": classBased({}, enableSketch) },
    "the handler sends and receives": {
      "main.c": interruptDriven(
        {},
        `int main(void) {\n  EICRA = _BV(ISC01);\n  sei();\n  command(0xF4);\n${listens}}\n`,
      ),
    },
    "fall, read, rise": {
      "main.c": changed(
        registers({}, enable),
        "    clock_falls();\n    value >>= 1;\n    if (PIND & (1 << DATA)) {\n      value |= 0x80;\n    }\n",
        "    loop_until_bit_is_clear(PIND, CLOCK);\n    value >>= 1;\n    if (PIND & (1 << DATA)) {\n      value |= 0x80;\n    }\n    loop_until_bit_is_set(PIND, CLOCK);\n",
      ),
    },
    "put, rise, fall": {
      "main.c": changed(
        registers({}, enable),
        "    clock_falls();\n    put(value & 1);\n    parity ^= value & 1;\n    value >>= 1;\n",
        "    put(value & 1);\n    parity ^= value & 1;\n    value >>= 1;\n    loop_until_bit_is_set(PIND, CLOCK);\n    loop_until_bit_is_clear(PIND, CLOCK);\n",
      ).replace(
        "  for (uint8_t i = 0; i < 8; i++) {\n    put",
        "  clock_falls();\n  for (uint8_t i = 0; i < 8; i++) {\n    put",
      ),
    },
  },
});
