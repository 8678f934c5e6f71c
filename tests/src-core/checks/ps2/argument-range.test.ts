import { describe, expect, it } from "vitest";
import { argumentRange } from "../../../../src-core/checks/ps2/argument-range.ts";
import { findingsIn, ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// Rates 10, 20, 40, 60, 80, 100, 200: ADNK-5023 design manual, p. 9, App. F; FreeBSD manual psm(4). Resolution codes
// 0 to 3 for 1, 2, 4, 8 counts per millimetre: ADNK-5023 design manual; Linux kernel, psmouse-base.c.

ruleTests(argumentRange, {
  wrong: {
    "a rate between two that are allowed": {
      "main.c": registers(
        {},
        `int main(void) {
  command(0xF3);
  command(50);
  //      ^^ ps2/argument-range: a mouse takes no sample rate of 50 reports per second; it takes 10, 20, 40, 60, 80, 100 or 200
  command(0xF4);
${listens}}
`,
      ),
    },
    "a constant with a name": {
      "mouse.ino": sketch(
        {},
        `const byte SAMPLE_RATE = 150;
void setup() {
  command(0xF3);
  command(SAMPLE_RATE);
  //      ^^^^^^^^^^^ ps2/argument-range: 150 reports per second
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "counts per millimetre instead of their code": {
      "tiny.c": pasted(
        {},
        `#define SET_RESOLUTION 0xE8
int main(void) {
  command(SET_RESOLUTION);
  command(8);
  //      ^ ps2/argument-range: resolution code 8; it takes 0 (1 per mm), 1 (2 per mm), 2 (4 per mm) or 3 (8 per mm)
  command(0xF4);
${listens}}
`,
      ),
    },
    "a member function with a rate": {
      "mouse.ino": classBased(
        {},
        `void setRate(uint8_t perSecond) {
  command(0xF3);
  command(perSecond);
}
void setup() {
  setRate(30);
  //      ^^ ps2/argument-range: 30 reports per second
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "a table, in hexadecimal": {
      "main.c": interruptDriven(
        {},
        `static const uint8_t start[] = {0xF6, 0xF3, 0x1E, 0xF4};
//                                          ^^^^ ps2/argument-range: 30 reports per second
int main(void) {
  sei();
  for (uint8_t i = 0; i < 4; i++) command(start[i]);
${listens}}
`,
      ),
    },
    "an argument forgotten": {
      "main.c": registers(
        {},
        `int main(void) {
  command(0xF3);
  command(0xF4);
  //      ^^^^ ps2/argument-range: 0xF3 (set sample rate) needs an argument before 0xF4 (enable reporting)
${listens}}
`,
      ),
    },
    "a rate that does not fit a byte": {
      "mouse.ino": sketch(
        {},
        `void setup() {
  command(0xF3);
  command(300 - 256);
  //      ^^^^^^^^^ ps2/argument-range: 44 reports per second
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "a constant of which a note says what it is": {
      "rate.h": `/* @wire means ps2.sample-rate */
#define RATE 90
/*           ^^ ps2/argument-range: RATE is 90, which is no sample rate of a mouse */
`,
      "main.c": '// @wire board atmega328p\n#include "rate.h"\nint main(void) { return RATE; }\n',
    },
    "a choice of which one is wrong": {
      "main.c": registers(
        {},
        `int main(void) {
  command(0xF3);
  if (PINB & 1) {
    command(80);
  } else {
    command(120);
    //      ^^^ ps2/argument-range: 120 reports per second
  }
  command(0xF4);
${listens}}
`,
      ),
    },
  },
  right: {
    "a command that is tried three times": {
      "main.c": registers(
        {},
        `static uint8_t told(uint8_t value) {
  for (uint8_t tries = 0; tries < 3; tries++) {
    if (command(value) == 0xFA) return 1;
  }
  return 0;
}
int main(void) {
  told(0xF3);
  told(40);
  told(0xF4);
${listens}}
`,
      ),
    },
    "every rate": {
      "main.c": registers(
        {},
        `static const uint8_t rates[] = {10, 20, 40, 60, 80, 100, 200};
int main(void) {
  for (uint8_t i = 0; i < sizeof rates; i++) {
    command(0xF3);
    command(rates[i]);
  }
  command(0xF4);
${listens}}
`,
      ),
    },
    "every resolution": {
      "mouse.ino": sketch(
        {},
        `void setup() {
  for (int code = 0; code <= 3; code++) {
    command(0xE8);
    command(code);
  }
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "a rate in hexadecimal": {
      "tiny.c": pasted({}, `int main(void) { command(0xF3); command(0xC8); command(0xF4);\n${listens}}\n`),
    },
    "a rate that is chosen while it runs": {
      "mouse.ino": classBased(
        {},
        `void setup() {
  uint8_t rate = analogRead(A0) / 4;
  command(0xF3);
  command(rate);
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "a choice between rates": {
      "main.c": interruptDriven(
        {},
        `int main(void) {
  sei();
  command(0xF3);
  command(PINB & 1 ? 40 : 100);
  command(0xF4);
${listens}}
`,
      ),
    },
    "an argument sent again after a refusal": {
      "main.c": registers(
        {},
        `static uint8_t tell(uint8_t byte) {
  uint8_t answer, tries = 0;
  do {
    answer = command(byte);
  } while (answer == 0xFE && ++tries < 3);
  return answer == 0xFA;
}
int main(void) {
  if (tell(0xF3) && tell(60) && tell(0xE8) && tell(1)) {
    tell(0xF4);
  }
${listens}}
`,
      ),
    },
    "numbers that are not for the mouse": {
      "mouse.ino": sketch(
        {},
        `void setup() {
  Serial.begin(1200);
  Serial.write(0xF3);
  Serial.write(50);
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
  },
});

describe("the bound that is named", () => {
  const withRate = (rate: number) => ({
    "main.c": registers(
      {},
      `int main(void) {\n  command(0xF3);\n  command(${rate});\n  command(0xF4);\n${listens}}\n`,
    ),
  });
  it("is that of the rates for one beyond them", () => {
    expect(findingsIn(withRate(201), [argumentRange]).map(({ limit }) => limit)).toEqual([
      { atLeast: 10, atMost: 200, unit: "report/s" },
    ]);
  });
  it("is none for one between two of them", () => {
    expect(findingsIn(withRate(90), [argumentRange]).map(({ limit }) => limit)).toEqual([undefined]);
  });
});
