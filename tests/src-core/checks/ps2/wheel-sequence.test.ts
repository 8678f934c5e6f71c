import { wheelSequence } from "../../../../src-core/checks/ps2/wheel-sequence.ts";
import { ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// 200, 100, 80 and then id 3: HT82M35X mouse controller data sheet, p. 3; SC84512 mouse controller data sheet; Linux
// kernel, psmouse-base.c. 200, 200, 80 and then id 4: Linux kernel documentation, sentelic; psmouse-base.c.

const rate = `static void rate(uint8_t per_second) {
  command(0xF3);
  command(per_second);
}
`;

ruleTests(wheelSequence, {
  wrong: {
    "the last rate wrong": {
      "main.c": registers(
        {},
        `${rate}int main(void) {
  rate(200);
  rate(100);
  rate(60);
  //   ^^ ps2/wheel-sequence: the sample rates 200, 100, 60 unlock nothing; the knock is 200, 100, 80 (wheel) or 200, 200, 80
  command(0xF2);
  reply();
  command(0xF4);
${listens}}
`,
      ),
    },
    "the first rate wrong": {
      "mouse.ino": sketch(
        {},
        `void rate(byte r) { command(0xF3); command(r); }
void setup() {
  rate(100);
  //   ^^^ ps2/wheel-sequence: 100, 100, 80 unlock nothing
  rate(100);
  rate(80);
  command(0xF2);
  byte id = reply();
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "another order": {
      "tiny.c": pasted(
        {},
        `${rate}int main(void) {
  rate(100);
  //   ^^^ ps2/wheel-sequence: 100, 200, 80 unlock nothing
  rate(200);
  rate(80);
  command(0xF2);
  reply();
  command(0xF4);
${listens}}
`,
      ),
    },
    "a resolution in between": {
      "mouse.ino": classBased(
        {},
        `static const uint8_t knock[] = {0xF3, 200, 0xF3, 100, 0xE8, 3, 0xF3, 80, 0xF2};
//                                                    ^^^^ ps2/wheel-sequence: 0xE8 interrupts the wheel knock; set 200, 100, 80
void setup() {
  for (uint8_t byte : knock) command(byte);
  reply();
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "one rate forgotten": {
      "main.c": interruptDriven(
        {},
        `${rate}int main(void) {
  sei();
  rate(200);
  rate(80);
  command(0xF2);
  //      ^^^^ ps2/wheel-sequence: after the sample rates 200, 80 only
  reply();
  command(0xF4);
${listens}}
`,
      ),
    },
    "five buttons, by constants with names": {
      "main.c": registers(
        {},
        `#define GET_ID 0xF2
enum { FIRST = 200, SECOND = 200, THIRD = 60 };
${rate}int main(void) {
  rate(FIRST);
  rate(SECOND);
  rate(THIRD);
  //   ^^^^^ ps2/wheel-sequence: 200, 200, 60
  command(GET_ID);
  if (reply() == 4) {
    rate(40);
  }
  command(0xF4);
${listens}}
`,
      ),
    },
    "no id asked for, but nothing else can have been meant": {
      "mouse.ino": sketch(
        {},
        `void setup() {
  byte rates[3] = {200, 100, 10};
  //                         ^^ ps2/wheel-sequence: 200, 100, 10
  for (int i = 0; i < 3; i++) {
    command(0xF3);
    command(rates[i]);
  }
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
  },
  right: {
    "the wheel": {
      "main.c": registers(
        {},
        `${rate}int main(void) {
  rate(200);
  rate(100);
  rate(80);
  command(0xF2);
  reply();
  command(0xF4);
${listens}}
`,
      ),
    },
    "five buttons": {
      "mouse.ino": sketch(
        {},
        `const byte knock[] = {200, 200, 80};
void setup() {
  for (byte r : knock) { command(0xF3); command(r); }
  command(0xF2);
  reply();
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "the wheel and then five buttons": {
      "tiny.c": pasted(
        {},
        `${rate}int main(void) {
  rate(200); rate(100); rate(80);
  command(0xF2);
  if (reply() == 3) {
    rate(200); rate(200); rate(80);
    command(0xF2);
    reply();
  }
  command(0xF4);
${listens}}
`,
      ),
    },
    "the rate set again afterwards": {
      "mouse.ino": classBased(
        {},
        `void rate(uint8_t r) { command(0xF3); command(r); }
void setup() {
  rate(200); rate(100); rate(80);
  command(0xF2);
  reply();
  rate(40);
  command(0xE8);
  command(3);
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "never asked for the id": {
      "main.c": interruptDriven(
        {},
        `${rate}int main(void) {
  sei();
  rate(200); rate(100); rate(80); rate(100);
  command(0xF4);
${listens}}
`,
      ),
    },
    "one rate alone": {
      "main.c": registers(
        {},
        `${rate}int main(void) {\n  rate(40);\n  command(0xF2);\n  reply();\n  command(0xF4);\n${listens}}\n`,
      ),
    },
    "a rate that the user chooses, set again and again": {
      "mouse.ino": sketch(
        {},
        `void rate(byte r) { command(0xF3); command(r); }
void setup() { rate(100); command(0xF4); }
void loop() {
  if (digitalRead(7)) rate(40); else rate(80);
  reply();
}
`,
      ),
    },
    "each step only when the one before was acknowledged": {
      "main.c": registers(
        {},
        `static uint8_t ok(uint8_t byte) { return command(byte) == 0xFA; }
static uint8_t set(uint8_t r) { return ok(0xF3) && ok(r); }
int main(void) {
  if (set(200) && set(100) && set(80) && ok(0xF2)) {
    reply();
  }
  set(60);
  ok(0xF4);
${listens}}
`,
      ),
    },
    "the knock again after a reset": {
      "mouse.ino": sketch(
        {},
        `void rate(byte r) { command(0xF3); command(r); }
void start() {
  command(0xFF);
  reply();
  reply();
  rate(200); rate(100); rate(80);
  command(0xF2);
  reply();
  command(0xF4);
}
void setup() { start(); }
void loop() { if (reply() == 0xAA) start(); }
`,
      ),
    },
  },
});
