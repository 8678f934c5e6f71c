import { describe, expect, test } from "vitest";
import { runSketch, type SketchOptions, usualWiring } from "./sketch-on-bench.ts";

const mouse = { party: "mouse", at: undefined } as const;

/** The clock falls at 5,000 us and rises at 5,200 us, and again each millisecond, three times. */
const threePulses: SketchOptions["prepare"] = ({ clock }, at) => {
  for (const start of [5000, 6000, 7000]) {
    at(start, () => clock.drive("mouse", "low", mouse));
    at(start + 200, () => clock.drive("mouse", "released", mouse));
  }
};

/** Names of files are those of arduino-core-avr, folder `cores/arduino`. */
describe("attachInterrupt", () => {
  test.each([
    ["FALLING", 3, [5000, 6000, 7000]],
    ["RISING", 3, [5200, 6200, 7200]],
    ["CHANGE", 6, [5000, 5200, 6000, 6200, 7000, 7200]],
  ])("%s: the function runs some microseconds after each such edge", (mode, _count, moments) => {
    const { edges } = runSketch(
      `
      void edge() { PORTD ^= 8; }
      void setup() { pinMode(3, OUTPUT); attachInterrupt(digitalPinToInterrupt(2), edge, ${mode}); }
      void loop() {}
    `,
      { prepare: threePulses },
    );
    const answers = edges("data")
      .filter(({ time }) => time > 4000)
      .map(({ time }) => time);
    expect(answers).toHaveLength(moments.length);
    for (const [index, moment] of moments.entries()) {
      // The compiled handler of WInterrupts.c takes 46 cycles to the function's first instruction, which is 2.9 us.
      expect((answers[index] ?? 0) - moment).toBeGreaterThan(2);
      expect((answers[index] ?? 0) - moment).toBeLessThan(5);
    }
  });

  test("WInterrupts.c: mode bits go to EICRA, the enable bit to EIMSK; detachInterrupt takes that back", () => {
    const { bytes } = runSketch(`
      void f() {}
      void tell() { Serial.write(EICRA); Serial.write(EIMSK); }
      void setup() { Serial.begin(9600);
        attachInterrupt(1, f, FALLING); tell(); attachInterrupt(0, f, CHANGE); tell(); detachInterrupt(1); tell();
        attachInterrupt(digitalPinToInterrupt(7), f, FALLING); tell(); }
      void loop() {}
    `);
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([0x08, 2, 0x09, 3, 0x09, 1, 0x09, 1]);
  });

  test("an edge behind detachInterrupt calls nothing; noInterrupts puts one off", () => {
    const { bytes } = runSketch(
      `
      volatile uint8_t count;
      void edge() { count++; }
      void setup() { Serial.begin(9600); attachInterrupt(0, edge, FALLING);
        noInterrupts(); delayMicroseconds(5500); uint8_t before = count; interrupts(); uint8_t after = count;
        detachInterrupt(0); delay(5); Serial.write(before); Serial.write(after); Serial.write(count); }
      void loop() {}
    `,
      { prepare: threePulses },
    );
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([0, 1, 1]);
  });

  test("ATmega2560: number 0 is INT4 on pin 2 (WInterrupts.c, variants/mega)", () => {
    const { bytes } = runSketch(
      `
      volatile uint8_t count;
      void edge() { count++; }
      void setup() { Serial.begin(9600); attachInterrupt(digitalPinToInterrupt(2), edge, FALLING);
        Serial.write(digitalPinToInterrupt(2)); Serial.write(EICRB); Serial.write(EIMSK); delay(10); Serial.write(count); }
      void loop() {}
    `,
      {
        chip: "atmega2560",
        wiring: { ...usualWiring, clock: "PE4", data: "PE5", transmit: "PE1", rts: "PJ0" },
        prepare: threePulses,
      },
    );
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([0, 0x02, 0x10, 3]);
  });

  test("beside ISR(INT1_vect) the sketch does not link, and is refused", () => {
    const { end } = runSketch(
      "ISR(INT1_vect) {} void f() {} void setup() { attachInterrupt(0, f, LOW); } void loop() {}",
    );
    expect(end).toMatchObject({
      message: expect.stringMatching(/^cannot run: `attachInterrupt` beside .*INT1_vect/),
    });
  });

  test("an ISR of the sketch's own runs beside the core", () => {
    const { edges } = runSketch(
      "ISR(INT0_vect) { PORTD ^= 8; } void setup() { DDRD |= 8; EICRA = 2; EIMSK = 1; } void loop() { delay(1); }",
      { prepare: threePulses },
    );
    expect(edges("data").filter(({ time }) => time > 4000)).toHaveLength(3);
  });

  test("what is wrong in the attached function stops the run at its place", () => {
    const { end, stoppedAt } = runSketch(
      "void edge() { analogRead(0); } void setup() { attachInterrupt(0, edge, FALLING); } void loop() {}",
      { prepare: threePulses },
    );
    expect(end).toMatchObject({ message: "cannot run: `analogRead`: the bench has no analogue converter" });
    expect(stoppedAt).toBe("analogRead(0)");
  });
});

describe("what the bench does not do stops the run at the call", () => {
  test.each([
    ["", "analogWrite(3, 10)", "`analogWrite`: the bench makes no waves for the sketch core"],
    ["", "tone(3, 10)", "`tone`: the bench makes no waves for the sketch core"],
    ["#include <SPI.h>\n", "SPI.begin()", "`SPIClass::begin`: the bench has no SPI bus"],
    ["#include <Wire.h>\n", "Wire.begin()", "`TwoWire::begin`: the bench has no two-wire bus"],
  ])("%s%s", (header, call, message) => {
    const { end, stoppedAt } = runSketch(`${header}void setup() { ${call}; } void loop() {}`);
    expect(end).toMatchObject({ message: `cannot run: ${message}` });
    expect(stoppedAt).toBe(call);
  });

  test("a sketch without loop", () => {
    expect(runSketch("void setup() {}").end).toMatchObject({ message: "there is no `loop`" });
  });
});

test("global constructors run before init and setup", () => {
  const { bytes } = runSketch(`
    struct Early { uint8_t timer; Early() : timer(TCCR0B) {} };
    Early early;
    void setup() { Serial.begin(9600); Serial.write(early.timer); Serial.write(TCCR0B); }
    void loop() {}
  `);
  expect(bytes(9600).map(({ byte }) => byte)).toEqual([0, 3]);
});
