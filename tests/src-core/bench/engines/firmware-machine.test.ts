import { expect, test } from "vitest";
import { runSketch, type SketchRun } from "../sketch-core/sketch-on-bench.ts";

/** Leaves something behind wherever a machine can remember something. */
const sketch = `
  struct Box { Box() : n(7) {} virtual int next() { return ++n; } int n; };
  Box box;
  int counted;
  volatile byte seen = 3;
  char text[8];
  void fell() { seen++; }
  int once() { static int first = analogReadResult(); static byte calls; return first + calls++; }
  int analogReadResult() { return counted * 10 + 5; }
  void setup() {
    Serial.begin(9600);
    pinMode(4, INPUT_PULLUP);
    attachInterrupt(digitalPinToInterrupt(2), fell, FALLING);
    strcpy(text, "a,b");
    strtok(text, ",");
  }
  void loop() {
    Box *held = new Box();
    counted++;
    Serial.write(once());
    Serial.write(box.next());
    Serial.write(held->next());
    Serial.write(random(200));
    Serial.write(seen);
    Serial.write((byte)(unsigned)held);
    char *part = strtok(0, ",");
    Serial.write(part ? *part : 'z');
    if (counted == 3) delay(7);
    if (counted < 2) delete held;
  }`;

const told = (run: SketchRun) => ({ end: run.end, rxd: run.edges("rxd") });

// The reference is a machine that ran nothing before.
test("a run on a machine that ran before is that on a new one", () => {
  const milliseconds = 60;
  const prepare: NonNullable<Parameters<typeof runSketch>[1]>["prepare"] = (wires, at) => {
    for (const time of [5_000, 12_000, 31_000]) {
      at(time, () => wires.clock.drive("mouse", "low", { party: "mouse", at: undefined }));
      at(time + 40, () => wires.clock.drive("mouse", "released", { party: "mouse", at: undefined }));
    }
  };
  const anew = told(runSketch(sketch, { milliseconds, prepare }));
  expect(anew.end).toEqual({ kind: "ended" });
  expect(anew.rxd.length).toBeGreaterThan(100);
  for (const runsBefore of [1, 2])
    expect(told(runSketch(sketch, { milliseconds, prepare, runsBefore }))).toEqual(anew);
});

// A static data member that is defined within its class is initialised by a constant, before anything runs: C++11 9.4.2p3, 3.6.2p2.
test("members that a class defines in itself have their values from the start, in each run", () => {
  const constants = `
    struct Limits { static constexpr uint8_t tries = 3; static const uint8_t gap = 12; uint8_t all() { return tries + gap; } };
    Limits limits;
    uint8_t first = Limits::tries * 2;
    void setup() {
      Serial.begin(9600);
      Serial.write(limits.all());
      Serial.write(first);
      for (uint8_t i = 0; i < Limits::tries; i++) Serial.write(i);
    }
    void loop() {}`;
  for (const runsBefore of [0, 1]) {
    const sent = runSketch(constants, { milliseconds: 20, runsBefore }).bytes(9600);
    expect(sent.map(({ byte }) => byte)).toEqual([15, 6, 0, 1, 2]);
  }
});

// The value of a template's parameter is that of its argument: C++11 14.3.2.
test("a template's parameter has the value of the parameter around it, in each run", () => {
  const nested = `
    template <uint8_t LAMP> struct Lamp { static uint8_t number() { return LAMP; } };
    template <uint8_t FIRST> struct Row { uint8_t number() { return Lamp<FIRST>::number(); } };
    Row<5> row;
    void setup() {
      Serial.begin(9600);
      Serial.write(row.number());
    }
    void loop() {}`;
  for (const runsBefore of [0, 1, 2]) {
    const sent = runSketch(nested, { milliseconds: 20, runsBefore }).bytes(9600);
    expect(sent.map(({ byte }) => byte)).toEqual([5]);
  }
});
