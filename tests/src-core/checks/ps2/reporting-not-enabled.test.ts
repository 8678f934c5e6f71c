import { reportingNotEnabled } from "../../../../src-core/checks/ps2/reporting-not-enabled.ts";
import { ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// Reporting is off after a reset (FF) and after "set defaults" (F6), and F4 turns it on; EB asks for one report: EM84502
// mouse controller data sheet, section E; interrupt list, INT 15h AX=C201h, settings after reset.

ruleTests(reportingNotEnabled, {
  wrong: {
    "a reset and nothing more": {
      "main.c": registers(
        {},
        `int main(void) {
  command(0xFF);
//^^^^^^^^^^^^^ ps2/reporting-not-enabled: send 0xF4 (enable reporting) last, or ask for each report with 0xEB (read data)
  reply();
  reply();
${listens}}
`,
      ),
    },
    "rate and resolution set in a sketch": {
      "mouse.ino": sketch(
        {},
        `void setup() {
  command(0xF3);
  command(40);
  command(0xE8);
  command(3);
//^^^^^^^^^^ ps2/reporting-not-enabled: the mouse is set up but never told to report
}
void loop() { reply(); }
`,
      ),
    },
    "stream mode is not reporting": {
      "tiny.c": pasted(
        {},
        `#define SET_STREAM_MODE 0xEA
int main(void) {
  command(SET_STREAM_MODE);
//^^^^^^^^^^^^^^^^^^^^^^^^ ps2/reporting-not-enabled: 0xF4
${listens}}
`,
      ),
    },
    "a table without F4": {
      "mouse.ino": classBased(
        {},
        `const uint8_t start[] = {0xF6, 0xF3, 60};
void setup() {
  for (uint8_t i = 0; i < sizeof start; i++) {
    command(start[i]);
//  ^^^^^^^^^^^^^^^^^ ps2/reporting-not-enabled: 0xF4
  }
}
void loop() { reply(); }
`,
      ),
    },
    "the wheel unlocked, the reports forgotten": {
      "main.c": interruptDriven(
        {},
        `static void rate(uint8_t value) {
  command(0xF3);
  command(value);
}
int main(void) {
  sei();
  rate(200);
  rate(100);
  rate(80);
  command(0xF2);
//^^^^^^^^^^^^^ ps2/reporting-not-enabled: 0xF4
  if (reply() == 3) {
    PORTB |= _BV(5);
  }
${listens}}
`,
      ),
    },
    "a library that is only written to": {
      "mouse.ino": `#include <PS2Mouse.h>
PS2Mouse mouse(2, 3);
void setup() {
  mouse.write(0xFF);
//^^^^^^^^^^^^^^^^^ ps2/reporting-not-enabled: 0xF4
}
void loop() {
  mouse.read();
}
`,
    },
    "turned off instead of on": {
      "main.c": registers(
        {},
        `int main(void) {\n  command(0xF5);\n//^^^^^^^^^^^^^ ps2/reporting-not-enabled: 0xF4\n${listens}}\n`,
      ),
    },
  },
  right: {
    "enabled behind so much that it is not come to": {
      "main.c": registers(
        {},
        `static void blink(void) {
  for (uint8_t a = 0; a < 100; a++) for (uint8_t b = 0; b < 100; b++) for (uint8_t c = 0; c < 100; c++) PORTB ^= 1;
}
int main(void) {
  command(0xF6);
  ${"blink(); ".repeat(20)}
  command(0xF4);
${listens}}
`,
      ),
    },
    "enabled last": {
      "main.c": registers(
        {},
        `int main(void) {\n  command(0xFF);\n  reply();\n  reply();\n  command(0xF4);\n${listens}}\n`,
      ),
    },
    "enabled only when all went well": {
      "mouse.ino": sketch(
        {},
        `bool ok(byte value) { return command(value) == 0xFA; }
bool start() {
  if (!ok(0xFF)) return false;
  if (reply() != 0xAA) return false;
  reply();
  return ok(0xF3) && ok(40) && ok(0xF4);
}
bool ready = false;
void setup() {}
void loop() {
  if (!ready) ready = start();
  else reply();
}
`,
      ),
    },
    "asked for each report": {
      "tiny.c": pasted(
        {},
        `int main(void) {
  command(0xF0);
  for (;;) {
    command(0xEB);
    reply();
    reply();
    reply();
  }
}
`,
      ),
    },
    "it only listens": {
      "mouse.ino": sketch(
        {},
        `void setup() { pinMode(CLK, INPUT); pinMode(DAT, INPUT); }\nvoid loop() { reply(); }\n`,
      ),
    },
    "it listens, and asks for a byte again": {
      "mouse.ino": classBased(
        {},
        `void setup() {}\nvoid loop() {\n  if (reply() & 0x40) command(0xFE);\n}\n`,
      ),
    },
    "the byte comes from the other side": {
      "mouse.ino": sketch(
        {},
        `void setup() { Serial.begin(9600); command(0xFF); }
void loop() {
  if (Serial.available()) command(Serial.read());
}
`,
      ),
    },
    "enabled by an interrupt-driven host, in another function": {
      "main.c": interruptDriven(
        {},
        `static void on(void) { command(0xF4); }
int main(void) {
  sei();
  command(0xE6);
  if (PINB & 1) {
    on();
  }
${listens}}
`,
      ),
    },
    "a library that is told to begin after a byte was sent": {
      "mouse.ino": `#include <PS2Mouse.h>
PS2Mouse mouse(2, 3);
void setup() {
  mouse.write(0xFF);
  mouse.enableReports();
}
void loop() {
  mouse.read();
}
`,
    },
    "a library that enables by itself": {
      "mouse.ino": `#include <PS2Mouse.h>
PS2Mouse mouse(2, 3);
void setup() {
  mouse.initialize();
}
void loop() {
  mouse.getPosition();
}
`,
    },
    "a machine that sends one byte per turn": {
      "mouse.ino": sketch(
        {},
        `const byte steps[] = {0xFF, 0xF3, 40, 0xF4};
byte step = 0;
void setup() {}
void loop() {
  if (step < sizeof steps) command(steps[step++]);
  else reply();
}
`,
      ),
    },
  },
});
