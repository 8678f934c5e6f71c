import { describe, expect, test } from "vitest";
import { runSketch, usualWiring } from "./sketch-on-bench.ts";

const mouse = { party: "mouse", at: undefined } as const;

/** Names of files are those of arduino-core-avr, folder `cores/arduino`. */
describe("pins of a sketch on the wires", () => {
  test("pinMode and digitalWrite drive a line, INPUT_PULLUP lets it go", () => {
    const { edges, end } = runSketch(`
      void setup() { digitalWrite(2, LOW); pinMode(2, OUTPUT); delay(2); pinMode(2, INPUT_PULLUP); }
      void loop() {}
    `);
    expect(end).toEqual({ kind: "ended" });
    const clock = edges("clock");
    const fall = clock.find(({ level }) => level === 0);
    const rise = clock.find(({ time, level }) => level === 1 && fall !== undefined && time > fall.time);
    expect(fall?.text).toBe("pinMode(2, OUTPUT)");
    expect(rise?.text).toBe("pinMode(2, INPUT_PULLUP)");
    // wiring.c: `delay` counts whole milliseconds of `micros`, which has steps of 4 us.
    expect((rise?.time ?? 0) - (fall?.time ?? 0)).toBeGreaterThan(1996);
    expect((rise?.time ?? 0) - (fall?.time ?? 0)).toBeLessThan(2025);
  });

  test("wiring_digital.c: INPUT_PULLUP sets the bit in PORT, INPUT clears it, OUTPUT leaves it", () => {
    const { bytes } = runSketch(`
      void tell() { Serial.write(PORTB & 1); Serial.write(DDRB & 1); }
      void setup() {
        Serial.begin(9600);
        pinMode(8, INPUT_PULLUP); tell();
        pinMode(8, OUTPUT); tell();
        pinMode(8, INPUT); tell();
      }
      void loop() {}
    `);
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([1, 0, 1, 1, 0, 0]);
  });

  test("digitalRead sees a line as the mouse drives it, registers and functions alike", () => {
    const { bytes } = runSketch(
      `
      void setup() { Serial.begin(9600); pinMode(3, INPUT); delay(5); tell(); delay(10); tell(); }
      void tell() { Serial.write(digitalRead(3)); Serial.write((PIND >> 3) & 1); }
      void loop() {}
    `,
      { prepare: ({ data }, at) => at(10_000, () => data.drive("mouse", "low", mouse)) },
    );
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([1, 1, 0, 0]);
  });

  test("A0 to A5 are pins of port C by their numbers (variants/standard/pins_arduino.h)", () => {
    const { bytes } = runSketch(`
      void setup() { Serial.begin(9600); pinMode(A0, OUTPUT); pinMode(19, OUTPUT); Serial.write(DDRC); }
      void loop() {}
    `);
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([0b100001]);
  });

  test("digitalWrite disconnects a timer from its pin (wiring_digital.c, turnOffPWM)", () => {
    const { bytes } = runSketch(`
      void setup() {
        Serial.begin(9600);
        TCCR0A |= 1 << COM0A1; Serial.write(TCCR0A); digitalWrite(6, HIGH); Serial.write(TCCR0A);
      }
      void loop() {}
    `);
    // init() of wiring.c sets WGM01 and WGM00; COM0A1 is bit 7 (iom328p.h).
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([0x83, 0x03]);
  });

  test.each([
    ["MSBFIRST", [1, 0, 1, 1, 0, 0, 0, 1]],
    ["LSBFIRST", [1, 0, 0, 0, 1, 1, 0, 1]],
  ])("shiftOut 0xB1 %s: data at each rising edge of the clock (wiring_shift.c)", (order, bits) => {
    const { edges } = runSketch(`
      void setup() { pinMode(2, OUTPUT); pinMode(3, OUTPUT); delay(1); shiftOut(3, 2, ${order}, 0xB1); }
      void loop() {}
    `);
    const shifted = edges("clock").filter(({ level, text }) => level === 1 && text.startsWith("shiftOut"));
    const levels = shifted.map(({ time }) => edges("data").findLast((edge) => edge.time <= time)?.level ?? 0);
    expect(levels).toEqual(bits);
  });

  test("a number that the board does not have stops the run at the call", () => {
    const { end, stoppedAt } = runSketch("void setup() { digitalWrite(20, HIGH); } void loop() {}");
    expect(end).toMatchObject({
      message: "cannot run: pin 20: a board with ATmega328P has no such pin",
    });
    expect(stoppedAt).toBe("digitalWrite(20, HIGH)");
  });

  test("pins of other boards: 20 is PD1 of an ATmega2560 (variants/mega/pins_arduino.h)", () => {
    const { bytes } = runSketch(
      "void setup() { Serial.begin(9600); pinMode(20, OUTPUT); Serial.write(DDRD); } void loop() {}",
      {
        chip: "atmega2560",
        wiring: { ...usualWiring, clock: "PE4", data: "PE5", transmit: "PE1", rts: "PJ0" },
      },
    );
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([0x02]);
  });
});

describe("pulseIn", () => {
  const measure = (pulse: string, length: number, state: 0 | 1) =>
    runSketch(
      `void setup() { Serial.begin(9600); unsigned long t = ${pulse};
        Serial.write(t & 0xff); Serial.write(t >> 8); } void loop() {}`,
      {
        prepare: ({ data }, at) => {
          const [first, second] =
            state === 0 ? (["low", "released"] as const) : (["released", "low"] as const);
          if (state === 1) at(1000, () => data.drive("mouse", "low", mouse));
          at(5000, () => data.drive("mouse", first, mouse));
          at(5000 + length, () => data.drive("mouse", second, mouse));
        },
      },
    ).bytes(9600);

  test.each([
    [100, 0],
    [1000, 0],
    [1000, 1],
  ] as const)(
    "%d us at level %d, short by a handler of timer 0 at most (wiring_pulse.c)",
    (length, state) => {
      const [low, high] = measure(`pulseIn(3, ${state === 0 ? "LOW" : "HIGH"})`, length, state);
      const found = (low?.byte ?? 0) + 256 * (high?.byte ?? 0);
      // Turns of 16 cycles; while the overflow handler of timer 0 runs, about 100 cycles, none is counted.
      expect(found).toBeGreaterThanOrEqual(length - 9);
      expect(found).toBeLessThanOrEqual(length + 2);
    },
  );

  test("no pulse within the timeout gives 0", () => {
    const { bytes } = runSketch(
      "void setup() { Serial.begin(9600); Serial.write(pulseIn(3, LOW, 10000)); } void loop() {}",
    );
    const [answer] = bytes(9600);
    expect(answer?.byte).toBe(0);
    // wiring_pulse.c: timeout in turns of 16 cycles; the awaiting loops of wiring_pulse.S have 11, so it ends sooner.
    expect(answer?.time).toBeGreaterThan(6500);
    expect(answer?.time).toBeLessThan(10_500);
  });
});
