import { noPullUp } from "../../../../src-core/checks/ps2/no-pullup.ts";
import { ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// Resistors of 1 to 10 kohm to +5 V: The PS/2 Mouse/Keyboard Protocol (2003), Electrical Interface. The chip's pull-up
// is on while the bit in DDRx is 0 and that in PORTx is 1: ATmega328P datasheet (7810C), Table 13-1.

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
const said = (words: string): string =>
  `// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD2 data=PD3${words}\n`;
const saidSketch = (words: string): string => `// @wire ps2 clock=2 data=3${words}\n`;

ruleTests(noPullUp, {
  wrong: {
    "said to be internal, and never turned on": {
      "main.c": registers({ notes: said(" pullups=internal") }, enable).replace(
        "static void release(uint8_t bit) { DDRD &= ~(1 << bit); }\n",
        `static void release(uint8_t bit) { DDRD &= ~(1 << bit); }
//                                 ^^^^^^^^^^^^^^^^^^^ ps2/no-pullup: nothing in the code pulls the clock and data lines up, although
`,
      ),
    },
    "plain INPUT in a sketch, nothing said": {
      "mouse.ino": sketch({ notes: saidSketch("") }, enableSketch).replace(
        "  pinMode(pin, INPUT);\n",
        "  pinMode(pin, INPUT);\n  //           ^^^^^ ps2/no-pullup: the clock and data lines up, and no note says that resistors do\n",
      ),
    },
    "no note at all": {
      "mouse.ino": sketch({ notes: "" }, enableSketch).replace(
        "  pinMode(pin, INPUT);\n",
        "  pinMode(pin, INPUT);\n  //           ^^^^^ ps2/no-pullup: clock and data lines\n",
      ),
    },
    "one line forgotten": {
      "mouse.ino": sketch(
        { notes: saidSketch(" pullups=internal") },
        `void setup() {
  pinMode(CLK, INPUT_PULLUP);
  pinMode(DAT, INPUT);
  //           ^^^^^ ps2/no-pullup: the data line up
}
void loop() {
  while (digitalRead(CLK)) ;
}
`,
      ),
    },
    "a class": {
      "mouse.ino": classBased({ notes: saidSketch(" pullups=internal") }, enableSketch).replace(
        "  void high(uint8_t pin) { pinMode(pin, INPUT); }\n",
        "  void high(uint8_t pin) { pinMode(pin, INPUT); }\n  //                                    ^^^^^ ps2/no-pullup: clock and data\n",
      ),
    },
    "the direction alone is written": {
      "tiny.c": pasted(
        {
          notes: "/* @wire board attiny85 clock=8MHz\n   @wire ps2 clock=PB2 data=PB0 pullups=internal */\n",
        },
        enable,
      ).replace("  LET_GO(CLOCK);\n", "  LET_GO(CLOCK);\n//^^^^^^^^^^^^^ ps2/no-pullup: clock and data\n"),
    },
    "turned on for another pin": {
      "main.c": interruptDriven(
        { notes: said(" pullups=internal") },
        `int main(void) {
  DDRD &= ~(_BV(2) | _BV(3));
//^^^^^^^^^^^^^^^^^^^^^^^^^^ ps2/no-pullup: clock and data
  PORTD |= _BV(4);
  sei();
  command(0xF4);
${listens}}
`,
      ),
    },
  },
  right: {
    "resistors outside": { "main.c": registers({}, enable) },
    "resistors outside, by edgewise.json": {
      "edgewise.json": '{ "wires": { "ps2": { "clock": "2", "data": "3", "pullups": "external" } } }',
      "mouse.ino": sketch({ notes: "" }, enableSketch),
    },
    INPUT_PULLUP: {
      "mouse.ino": sketch({ notes: saidSketch("") }, enableSketch).replace(
        "pinMode(pin, INPUT)",
        "pinMode(pin, INPUT_PULLUP)",
      ),
    },
    "the output bit set while it is an input": {
      "main.c": registers({ notes: said(" pullups=internal") }, enable).replace(
        "{ DDRD &= ~(1 << bit); }",
        "{ DDRD &= ~(1 << bit); PORTD |= (1 << bit); }",
      ),
    },
    "the old way: HIGH on an input": {
      "mouse.ino": classBased({ notes: saidSketch(" pullups=internal") }, enableSketch).replace(
        "{ pinMode(pin, INPUT); }",
        "{ pinMode(pin, INPUT); digitalWrite(pin, HIGH); }",
      ),
    },
    "turned on once, and the latch never cleared for long": {
      "main.c": registers(
        { notes: said(" pullups=internal") },
        `int main(void) {
  PORTD |= _BV(PD2) | _BV(PD3);
  command(0xF4);
${listens}}
`,
      ),
    },
    "a pull-up by a whole-register write": {
      "main.c": interruptDriven(
        { notes: said("") },
        `int main(void) {
  DDRD = 0;
  PORTD = 0x0C;
  sei();
  command(0xF4);
${listens}}
`,
      ),
    },
    "no PS/2 port at all": {
      "blink.ino": `void setup() {
  pinMode(13, OUTPUT);
  pinMode(7, INPUT);
}
void loop() {
  digitalWrite(13, digitalRead(7));
}
`,
    },
    "a switch without pull-up beside the port": {
      "mouse.ino": sketch(
        {},
        `void setup() {
  pinMode(7, INPUT);
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
  },
});
