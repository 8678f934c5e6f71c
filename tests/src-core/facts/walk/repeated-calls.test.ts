import { describe, expect, it } from "vitest";
import { argumentsOf, linesOf, walkC, walkSketch } from "./walk-text.ts";

// A call that finds everything as an earlier one found it is not walked again; these find something changed.
describe("calls of the same function with the same arguments", () => {
  it("see what was written in between", () => {
    const walk = walkC(`static uint8_t level = 1;
static void tell(void) { _delay_ms(level); }
int main(void) { tell(); level = 2; tell(); tell(); level = 1; tell(); }
`);
    expect(argumentsOf(walk, "_delay_ms")).toEqual(["1", "2", "2", "1"]);
  });

  it("see what they changed themselves", () => {
    const walk = walkC(`static uint8_t next(void) { static uint8_t n = 4; return n++; }
int main(void) { _delay_ms(next()); _delay_ms(next()); _delay_ms(next()); }
`);
    expect(argumentsOf(walk, "_delay_ms")).toEqual(["4", "5", "6"]);
  });

  it("see objects behind pointers, arrays and references", () => {
    const walk = walkSketch(`void bump(int *n) { *n += 1; }
void twice(int &n) { n *= 2; }
int sum(const int values[2]) { return values[0] + values[1]; }
void setup() {
  int n = 1, pair[2] = {10, 20};
  bump(&n); bump(&n); twice(n); twice(n);
  delay(n);
  delay(sum(pair));
  pair[1] = 30;
  delay(sum(pair));
}
void loop() {}
`);
    expect(argumentsOf(walk, "delay")).toEqual(["12", "30", "40"]);
  });

  it("see pins and ports", () => {
    const walk = walkC(`static void high(void) { PORTB |= 1; }
int main(void) { high(); DDRB |= 1; high(); DDRB &= ~1; high(); }
`);
    expect(linesOf(walk).filter((line) => line.startsWith("PB0"))).toEqual([
      "PB0 pulled-up",
      "PB0 high",
      "PB0 high",
      "PB0 pulled-up",
      "PB0 pulled-up",
    ]);
  });

  it("tell objects of a class apart", () => {
    const walk = walkSketch(`struct Lamp { int pin; void on() { delay(pin); } };
Lamp one = {3}, two = {4};
void setup() { one.on(); two.on(); one.on(); one.pin = 5; one.on(); }
void loop() {}
`);
    expect(argumentsOf(walk, "delay")).toEqual(["3", "4", "3", "5"]);
  });

  it("keep what they leave changed", () => {
    const walk = walkC(`static uint8_t phase;
static void start(void) { phase = 7; }
int main(void) { start(); phase = 1; start(); _delay_ms(phase); }
`);
    expect(argumentsOf(walk, "_delay_ms")).toEqual(["7"]);
  });

  it("end the path again where they ended it", () => {
    const walk = walkC(`static void stop(void) { for (;;) { } }
int main(void) {
  if (PINB & 1) stop();
  if (PINB & 2) stop();
  _delay_ms(1);
}
`);
    expect(linesOf(walk)).toEqual([
      "either [endless: []] or []",
      "either [endless: []] or []",
      "_delay_ms(1)",
    ]);
  });
});
