import { expect, it } from "vitest";
import { commandUnknown } from "../../../../src-core/checks/ps2/command-unknown.ts";
import { findingsIn, ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// The sixteen commands and which of them take an argument: EM84502 mouse controller data sheet, section E, command
// table; ADNK-5023 design manual, p. 9, App. F.

ruleTests(commandUnknown, {
  wrong: {
    "a literal in C": {
      "main.c": registers(
        {},
        `int main(void) {
  command(0xFF);
  reply();
  reply();
  command(0xF1);
  //      ^^^^ ps2/command-unknown: 0xF1 is no command of a PS/2 mouse; near it are 0xF0 (set remote mode) and 0xF2
  command(0xF4);
${listens}}
`,
      ),
    },
    "an enumeration": {
      "mouse.ino": sketch(
        {},
        `enum Command : byte { RESET = 0xFF, DEFAULTS = 0xF6, ENABLE = 0xF7 };
void setup() {
  command(DEFAULTS);
  command(ENABLE);
  //      ^^^^^^ ps2/command-unknown: 0xF7
}
void loop() { reply(); }
`,
      ),
    },
    "a table that is sent in a loop": {
      "main.c": registers(
        {},
        `static const uint8_t start[] = {0xF6, 0xF3, 40, 0xE8, 2, 0xE5, 0xF4};
//                                                       ^^^^ ps2/command-unknown: 0xE5
int main(void) {
  for (uint8_t i = 0; i < sizeof start; i++) {
    command(start[i]);
  }
${listens}}
`,
      ),
    },
    "a table in flash": {
      "tiny.c": pasted(
        {},
        `#include <avr/pgmspace.h>
static const uint8_t start[3] PROGMEM = {0xFF, 0xFD, 0xF4};
//                                             ^^^^ ps2/command-unknown: 0xFD
int main(void) {
  const uint8_t *next = start;
  for (uint8_t left = sizeof start; left > 0; left--) {
    command(pgm_read_byte(next++));
  }
${listens}}
`,
      ),
    },
    "a macro, through two wrappers and a class": {
      "mouse.ino": classBased(
        {},
        `#define MOUSE_ENABLE 0x0F4
#define MOUSE_IDENTIFY 0x2F
bool acknowledged(uint8_t value) { return command(value) == 0xFA; }
bool tell(uint8_t value) { return acknowledged(value) || acknowledged(value); }
void setup() {
  tell(MOUSE_IDENTIFY);
  //   ^^^^^^^^^^^^^^ ps2/command-unknown: 0x2F
  tell(MOUSE_ENABLE);
}
void loop() { reply(); }
`,
      ),
    },
    "sent by an interrupt handler": {
      "main.c": interruptDriven(
        {},
        `int main(void) {
  sei();
  if (command(0xF8) == 0xFA) {
    //        ^^^^ ps2/command-unknown: 0xF8
    command(0xF4);
  }
${listens}}
`,
      ),
    },
    "a library that is not there": {
      "mouse.ino": `// @wire ps2 clock=2 data=3 pullups=external
#include <PS2Mouse.h>
PS2Mouse mouse(2, 3);
void setup() {
  mouse.write(0xFF);
  mouse.write(0xF5);
  mouse.write(0xFB);
  //          ^^^^ ps2/command-unknown: 0xFB
  mouse.write(0xF4);
}
void loop() {}
`,
    },
    "an argument too many": {
      "main.c": registers(
        {},
        `int main(void) {
  command(0xF3);
  command(100);
  command(80);
  //      ^^ ps2/command-unknown: 0x50
  command(0xF4);
${listens}}
`,
      ),
    },
  },
  right: {
    "all sixteen, with their arguments": {
      "main.c": registers(
        {},
        `static const uint8_t all[] = {0xFF, 0xFE, 0xF6, 0xF5, 0xF4, 0xF3, 100, 0xF2, 0xF0, 0xEC, 0xEB, 0xEA, 0xE9, 0xE8, 3, 0xE7, 0xE6, 0xEE};
int main(void) {
  for (uint8_t i = 0; i < sizeof(all) / sizeof(all[0]); i++) command(all[i]);
${listens}}
`,
      ),
    },
    "rates behind a function": {
      "mouse.ino": sketch(
        {},
        `bool rate(byte perSecond) { return command(0xF3) == 0xFA && command(perSecond) == 0xFA; }
void setup() {
  if (!rate(200) || !rate(100) || !rate(80)) return;
  command(0xF2);
  reply();
  rate(40);
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "tried again until it is acknowledged": {
      "tiny.c": pasted(
        {},
        `static void tell(uint8_t byte) {
  while (command(byte) == 0xFE) {
  }
}
int main(void) {
  tell(0xE8);
  tell(0x03);
  tell(0xF3);
  tell(60);
  tell(0xF4);
${listens}}
`,
      ),
    },
    "a machine with a state per turn": {
      "main.c": registers(
        {},
        `static uint8_t state;
static void next(void) {
  switch (state++) {
  case 0:
    command(0xF3);
    break;
  case 1:
    command(200);
    break;
  case 2:
    command(0xF4);
    break;
  default:
    reply();
  }
}
int main(void) {
  for (;;) {
    next();
  }
}
`,
      ),
    },
    "a table of commands with arguments": {
      "mouse.ino": classBased(
        {},
        `struct Step { uint8_t command; int argument; };
const Step steps[] = {{0xF3, 100}, {0xE8, 2}, {0xE6, -1}, {0xF4, -1}};
void setup() {
  for (const Step &step : steps) {
    command(step.command);
    if (step.argument >= 0) command(step.argument);
  }
}
void loop() { reply(); }
`,
      ),
    },
    "a byte from the other side, whatever it is": {
      "mouse.ino": sketch(
        {},
        `void setup() {
  Serial.begin(9600);
  command(0xF4);
}
void loop() {
  if (Serial.available()) command(Serial.read());
}
`,
      ),
    },
    "wrap mode, in which the mouse echoes": {
      "main.c": interruptDriven(
        {},
        `int main(void) {
  sei();
  command(0xEE);
  command(0x55);
  command(0xAA);
  command(0xEC);
  command(0xF4);
${listens}}
`,
      ),
    },
    "the serial side has bytes of its own": {
      "mouse.ino": sketch(
        {},
        `#include <SoftwareSerial.h>
SoftwareSerial mouseSerial(10, 11);
void setup() {
  mouseSerial.begin(1200);
  command(0xF4);
  mouseSerial.write(0x4D);
}
void loop() {
  mouseSerial.write(0x40);
  reply();
}
`,
      ),
    },
    "a device, not a host: it answers": {
      "keyboard.ino": `#include <ps2dev.h>
PS2dev mouse(3, 2);
void setup() {
  mouse.write(0xAA);
  mouse.write(0x00);
}
void loop() {
  unsigned char c;
  if (mouse.available()) {
    mouse.read(&c);
    mouse.write(0xFA);
    if (c == 0xF2) mouse.write(0x03);
  }
}
`,
    },
    "a rate that was set elsewhere, then its number": {
      "mouse.ino": sketch(
        {},
        `byte phase = 0;
void setup() { command(0xFF); }
void loop() {
  if (phase == 0) { command(0xE8); phase = 1; return; }
  if (phase == 1) { command(3); phase = 2; return; }
  if (phase == 2) { command(0xF4); phase = 3; }
}
`,
      ),
    },
  },
});

it.each([
  ["0x50", "0x50 is no command of a PS/2 mouse"],
  ["0xE5", "0xE5 is no command of a PS/2 mouse; near it is 0xE6 (set scaling 1:1)"],
  ["0xED", "0xED is no command of a PS/2 mouse; near it are 0xEC (reset wrap mode) and 0xEE (set wrap mode)"],
])("of %s names the commands that it may have been meant to be", (byte, message) => {
  const text = registers({}, `int main(void) {\n  command(${byte});\n  command(0xF4);\n${listens}}\n`);
  expect(findingsIn({ "main.c": text }, [commandUnknown]).map((each) => each.message)).toEqual([message]);
});
