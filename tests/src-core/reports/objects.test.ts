import { describe, expect, it } from "vitest";
import { tryReports } from "../../../src-core/reports/try-reports.ts";
import { factsOf } from "../checks/harness.ts";

// C++11 12.1p5: a class with a constructor of its own has none without arguments. Its objects are those of the firmware.
// The layout is that of mouse(4), Linux man-pages: the first byte is 0x40, the buttons, and the two top bits of Y and X.

const header = `#pragma once
#include <Arduino.h>
class Port {
public:
  Port(HardwareSerial &to, uint8_t mark) : to(to), mark(mark) {}
  uint8_t fill(uint8_t *out, int8_t x, int8_t y, bool left, bool right);
private:
  HardwareSerial &to;
  const uint8_t mark;
};
`;
/** The top byte is made of what the constructor was given. */
const body = (shift = 6) => `#include "port.h"
// @wire encodes two-button from x=x y=y left=left right=right into out
uint8_t Port::fill(uint8_t *out, int8_t x, int8_t y, bool left, bool right) {
  out[0] = mark | left << 5 | right << 4 | (y >> 4 & 0x0C) | (x >> ${shift} & 0x03);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  return 3;
}
`;
const loop = "void setup() {}\nvoid loop() {}\n";

function tried(objects: string, source = body()) {
  const { program, notes } = factsOf({
    "port.h": header,
    "port.cpp": source,
    "adapter.ino": `// @wire board atmega2560 clock=16MHz\n#include "port.h"\n${objects}${loop}`,
  });
  const [trial, ...others] = tryReports(program, notes) ?? [];
  if (trial === undefined || others.length > 0) throw new Error("one encoder is noted");
  return {
    faults: trial.faults.map(({ kind }) => kind),
    said: trial.notUnderstood.map(({ message }) => message),
  };
}

describe("an encoder of a class whose objects are made with arguments", () => {
  it.each([
    ["an object at file level, in another file", "Port port(Serial, 0x40);\n"],
    [
      "one of a class that is derived from it",
      "struct Wheel : Port { int8_t turned; Wheel() : Port(Serial, 0x40) {} };\nWheel wheel;\n",
    ],
    [
      "a member of an object, behind others",
      "struct Adapter { int8_t count; Port port; Adapter() : count(3), port(Serial, 0x40) {} };\nAdapter adapter;\n",
    ],
    ["one of several in an array", "Port ports[] = {Port(Serial, 0x40), Port(Serial1, 0x40)};\n"],
  ])("is called on %s", (_, objects) => {
    expect(tried(objects)).toEqual({ faults: [], said: [] });
  });

  it("is called with the members that the object has", () => {
    expect(tried("Port port(Serial, 0x00);\n").faults).toContain("sync-bit");
  });

  it("is told to be wrong where it is", () => {
    expect(tried("Port port(Serial, 0x40);\n", body(5)).faults).not.toEqual([]);
  });

  it("is not tried where the firmware has no such object", () => {
    expect(tried("")).toEqual({
      faults: [],
      said: [expect.stringContaining("an object whose class has no constructor without arguments")],
    });
  });
});
