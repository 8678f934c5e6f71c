import { describe, expect, it } from "vitest";
import { argumentsOf, walkC, walkOf, walkSketch } from "./walk-text.ts";

describe("objects of classes", () => {
  it("keeps what a constructor was given, in other files too", () => {
    const header = `#pragma once
#include <Arduino.h>
class Line {
public:
  Line(uint8_t pin, unsigned wait = 5) : pin(pin) { this->wait = wait; }
  void pulse();
private:
  const uint8_t pin;
  unsigned wait;
  unsigned times = 2;
};
`;
    const walk = walkOf({
      "line.h": header,
      "line.cpp": '#include "line.h"\nvoid Line::pulse() { delay(wait * times); digitalWrite(pin, HIGH); }\n',
      "adapter.ino":
        '// @wire board atmega328p\n#include "line.h"\nLine one(7), two(8, 30);\nvoid setup() { one.pulse(); two.pulse(); }\nvoid loop() {}\n',
    });
    expect(argumentsOf(walk, "delay")).toEqual(["10", "60"]);
    expect(argumentsOf(walk, "digitalWrite")).toEqual(["7, 1", "8, 1"]);
  });

  it("knows references, and members that are objects", () => {
    const walk = walkSketch(`struct Pins { int clock, data; };
class Port {
public:
  Port(Pins p) : pins(p) {}
  void use(int &count) { count += pins.data; }
  Pins pins;
};
Port port(Pins{4, 9});
void setup() { int n = 1; port.use(n); delay(n); }
void loop() {}
`);
    expect(argumentsOf(walk, "delay")).toEqual(["10"]);
  });

  it("takes what begin() sets as known afterwards, in handlers as well", () => {
    const walk = walkSketch(`class Port {
public:
  void begin(int clock, int data) { clockPin = clock; dataPin = data; }
  void edge() { delay(dataPin); }
private:
  int clockPin, dataPin;
};
Port port;
void fell() { port.edge(); }
void setup() { port.begin(2, 6); attachInterrupt(0, fell, FALLING); }
void loop() {}
`);
    expect(argumentsOf(walk, "delay")).toEqual(["6"]);
  });

  it("copies tables out of program memory, entry by entry and byte by byte", () => {
    const walk = walkC(`#include <string.h>
#include <avr/pgmspace.h>
struct step { unsigned char command; unsigned wait; };
static const struct step steps[] PROGMEM = { { 0xF3, 20 }, { 0xF4, 40 } };
static const unsigned char rates[] PROGMEM = { 60, 40 };
void delay(unsigned);
int main(void) {
    struct step now;
    unsigned char bytes[2];
    memcpy_P(&now, &steps[1], sizeof now);
    delay(now.wait);
    memcpy_P(bytes, rates, sizeof bytes);
    delay(bytes[1]);
}
`);
    expect(argumentsOf(walk, "delay")).toEqual(["40", "40"]);
  });
});

describe("entries", () => {
  it("starts at main, then at each handler, then at what nobody calls", () => {
    const walk = walkC(`#include <avr/interrupt.h>
static void helper(void) { }
void unused(uint8_t n) { helper(); }
ISR(INT0_vect) { helper(); }
int main(void) { helper(); }
`);
    expect(
      walk.entries.map(
        ({ entry }) =>
          `${entry.kind} ${entry.function.name === "main" ? "main" : (entry.vector ?? entry.function.name)}`,
      ),
    ).toEqual(["program main", "interrupt INT0_vect", "alone unused"]);
  });

  it("finds handlers that are given to the core, lambdas too", () => {
    const walk = walkSketch(`void fell() {}
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), fell, FALLING);
  attachInterrupt(digitalPinToInterrupt(3), [] { delay(4); }, CHANGE);
}
void loop() {}
`);
    const handlers = walk.entries.filter(({ entry }) => entry.kind === "interrupt");
    expect(handlers.length).toBe(2);
    expect(handlers.every(({ entry }) => entry.attachedBy?.name === "attachInterrupt")).toBe(true);
    expect(argumentsOf(walk, "delay")).toEqual(["4"]);
  });

  it("follows lambdas that capture their object", () => {
    const walk = walkSketch(`class Mouse {
  int hold = 120;
public:
  void start() {
    int more = 5;
    auto wait = [this, more](int extra) { delayMicroseconds(hold + more + extra); };
    wait(1);
    [&] { delay(hold); }();
  }
} mouse;
void setup() { mouse.start(); }
void loop() {}
`);
    expect(argumentsOf(walk, "delayMicroseconds")).toEqual(["126"]);
    expect(argumentsOf(walk, "delay")).toEqual(["120"]);
  });

  it("never knows what a handler may have changed, volatile or not", () => {
    const walk = walkC(`#include <avr/interrupt.h>
static uint8_t ready = 0, steady = 3;
ISR(INT0_vect) { ready = 1; }
int main(void) {
  while (!ready) { }
  _delay_ms(steady);
  _delay_ms(ready);
}
`);
    expect(argumentsOf(walk, "_delay_ms")).toEqual(["3", "?"]);
  });

  it("takes a counter that a timer counts up as a time", () => {
    const walk = walkC(`#include <avr/interrupt.h>
static volatile uint16_t milliseconds;
ISR(TIMER0_COMPA_vect) { milliseconds++; }
int main(void) {
  uint16_t since = milliseconds;
  while (milliseconds - since < 40) { }
}
`);
    const loop = walk.entries[0]?.events.find(({ kind }) => kind === "loop");
    expect(loop?.kind === "loop" && loop.waitsFor).toEqual([
      { kind: "time", unit: "ms", name: "milliseconds" },
    ]);
  });

  it("begins loop() with what earlier turns may have changed unknown", () => {
    const walk = walkSketch(`int turn = 0;
const int fixed = 8;
int once;
void setup() { once = 2; }
void loop() { delay(turn); delay(fixed); delay(once); turn++; }
`);
    expect(argumentsOf(walk, "delay")).toEqual(["?", "8", "2"]);
  });
});

// C++11 6.6p2: objects are destroyed however their block is left, in the reverse order of their making.
describe("objects that end with their block", () => {
  const guard = "struct Wait { unsigned n; Wait(unsigned n) : n(n) {} ~Wait() { delay(n); } };\n";
  const delays = (body: string): string[] =>
    argumentsOf(walkSketch(`${guard}void setup() { ${body} }\nvoid loop() {}\n`), "delay");

  it("runs destructors at the end of the block, the last object first", () => {
    expect(delays("{ Wait a(1), b(2); delay(3); } delay(4);")).toEqual(["3", "2", "1", "4"]);
  });

  it("runs them where a turn is left, those of the turn alone", () => {
    expect(
      delays("Wait a(1); for (int i = 0; i < 2; i++) { Wait b(2); if (i == 1) break; } delay(4);"),
    ).toEqual(["2", "2", "4", "1"]);
  });

  it("runs them on each way out of a function", () => {
    expect(delays("Wait a(1); { Wait b(2); if (digitalRead(4)) return; delay(3); }")).toEqual([
      "2",
      "1",
      "3",
      "2",
      "1",
    ]);
  });

  it("calls what an attribute names", () => {
    const text = `static void over(unsigned *n) { delay(*n); }
void setup() { __attribute__((cleanup(over))) unsigned n = 5; n++; delay(1); }
void loop() {}
`;
    expect(argumentsOf(walkSketch(text), "delay")).toEqual(["1", "6"]);
  });
});
