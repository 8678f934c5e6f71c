import { describe, expect, test } from "vitest";
import { runSketch } from "./sketch-on-bench.ts";

/** Values of an `unsigned long` that the sketch tells by `tell(value)`. */
function told(body: string, options: Parameters<typeof runSketch>[1] = {}): readonly number[] {
  const { bytes, end } = runSketch(
    `
    void tell(unsigned long value) { for (uint8_t i = 0; i < 4; i++) { Serial.write(value & 0xff); value >>= 8; } }
    void setup() { ${body} }
    void loop() {}
  `,
    options,
  );
  expect(end).toEqual({ kind: "ended" });
  const all = bytes(38_400).map(({ byte }) => byte);
  return Array.from({ length: all.length / 4 }, (_, index) =>
    all.slice(4 * index, 4 * index + 4).reduce((value, byte, place) => value + byte * 2 ** (8 * place), 0),
  );
}

/** Names of files are those of arduino-core-avr, folder `cores/arduino`. */
describe("time as the core keeps it", () => {
  test("wiring.c, init: what the registers of timers and USART are before setup", () => {
    const { bytes } = runSketch(`
      void setup() {
        uint8_t seen[] = { TCCR0A, TCCR0B, TIMSK0, TCCR1A, TCCR1B, TCCR2A, TCCR2B, UCSR0B, (uint8_t)(SREG & 0x80) };
        Serial.begin(9600);
        Serial.write(seen, sizeof seen);
      }
      void loop() {}
    `);
    // iom328p.h: WGM01 WGM00, CS01 CS00, TOIE0, WGM10, CS11 CS10, WGM20, CS22, none, I.
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([3, 3, 1, 1, 3, 1, 4, 0, 0x80]);
  });

  test("millis after delay(1000) at 16 MHz", () => {
    // wiring.c: the handler adds 1.024 ms each time, so millis lags by up to that and jumps by 1 or 2.
    const [millis = 0] = told("delay(1000); unsigned long t = millis(); Serial.begin(38400); tell(t);", {
      milliseconds: 1100,
    });
    expect(millis).toBeGreaterThanOrEqual(998);
    expect(millis).toBeLessThanOrEqual(1000);
  });

  test.each([
    [16_000_000, 4],
    [8_000_000, 8],
    [20_000_000, 3],
  ])("micros at %d Hz counts steps of %d us of 64 cycles", (hz, step) => {
    // wiring.c: ((m << 8) + t) * (64 / clockCyclesPerMicrosecond()), in whole numbers: 3 at 20 MHz.
    const values = told(
      "unsigned long t[5]; for (uint8_t i = 0; i < 5; i++) { t[i] = micros(); delayMicroseconds(50); }" +
        "Serial.begin(38400); for (uint8_t i = 0; i < 5; i++) tell(t[i]);",
      { hz },
    );
    expect(values).toHaveLength(5);
    expect(values.map((value) => value % step)).toEqual([0, 0, 0, 0, 0]);
    for (const [index, value] of values.slice(1).entries()) {
      const cycles = ((value - (values[index] ?? 0)) / step) * 64;
      expect(cycles).toBeGreaterThanOrEqual((50 * hz) / 1e6 - 64);
      expect(cycles).toBeLessThanOrEqual((50 * hz) / 1e6 + 320);
    }
  });

  test("micros goes on over an overflow that has no handler yet (wiring.c, TOV0)", () => {
    const [before = 0, after = 0] = told(
      "delay(3); noInterrupts(); unsigned long a = micros(); delayMicroseconds(1020);" +
        "unsigned long b = micros(); interrupts(); Serial.begin(38400); tell(a); tell(b);",
    );
    expect(after - before).toBeGreaterThanOrEqual(1016);
    expect(after - before).toBeLessThanOrEqual(1032);
  });

  test.each([1, 10, 120, 1000])("delayMicroseconds(%d) holds a line that long", (microseconds) => {
    const { edges } = runSketch(`
      void setup() { pinMode(2, OUTPUT); PORTD |= 4; delay(2); noInterrupts(); PORTD &= ~4; delayMicroseconds(${microseconds}); PORTD |= 4; }
      void loop() {}
    `);
    const fall = edges("clock").findLast(({ level }) => level === 0)?.time ?? 0;
    const rise = edges("clock").findLast(({ level }) => level === 1)?.time ?? 0;
    // wiring.c: "call = 4 cycles + 2 to 4 cycles to init us", a loop of 4 cycles, four of them a microsecond.
    expect(rise - fall).toBeGreaterThan(microseconds - 1.5);
    expect(rise - fall).toBeLessThan(microseconds + 1);
  });

  test("the overflow handler takes its time from the code it interrupts", () => {
    const turns = (interrupts: string) =>
      told(
        `delay(1); ${interrupts} unsigned long n = 0; uint16_t from = TCNT1;` +
          "TCCR1A = 0; TCCR1B = 1; TCNT1 = 0; while (TCNT1 < 60000) n++; interrupts(); Serial.begin(38400); tell(n);",
      )[0] ?? 0;
    const without = turns("noInterrupts();");
    const withThem = turns("");
    // 60,000 cycles hold three or four overflows of 16,384 cycles; the compiled handler takes 100 of each.
    expect(withThem).toBeLessThan(without);
    expect(withThem).toBeGreaterThan(without * 0.985);
  });

  test("a sketch with a yield of its own is told that delay would call it", () => {
    const { end, stoppedAt } = runSketch("void yield() {} void setup() { delay(1); } void loop() {}");
    expect(end).toMatchObject({ message: expect.stringMatching(/^cannot run: `delay` with a `yield`/) });
    expect(stoppedAt).toBe("delay(1)");
  });

  test("a handler for the core's own timer does not link, and is refused", () => {
    const { end } = runSketch("ISR(TIMER0_OVF_vect) {} void setup() {} void loop() {}");
    expect(end).toMatchObject({ message: expect.stringContaining("TIMER0_OVF_vect") });
  });

  test("a main of its own gets no init: time stands still", () => {
    const { bytes } = runSketch(
      "int main() { Serial.begin(9600); sei(); Serial.write(millis() + TCCR0B); for (;;) {} }",
    );
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([0]);
  });
});
