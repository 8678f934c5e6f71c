import { describe, expect, it } from "vitest";
import { tryReports } from "../../../src-core/reports/try-reports.ts";
import { factsOf } from "../checks/harness.ts";

// The layout is that of mouse(4), Linux man-pages: the first byte is 0x40, the buttons, and the two top bits of Y and X.

const start = "// @wire board atmega328p clock=16MHz\n#include <stdint.h>\n";
const note = (into: string) => `// @wire encodes two-button from x=x y=y left=b.0 right=b.1 into ${into}\n`;
const bytes = (send: string, x = "x & 0x3F") => `
  ${send}(0x40 | (b & 1) << 5 | (b & 2) << 3 | (y >> 4 & 0x0C) | (x >> 6 & 0x03));
  ${send}(${x});
  ${send}(y & 0x3F);
}
`;

function tried(file: string, text: string) {
  const { program, notes } = factsOf({ [file]: text });
  const [trial, ...others] = tryReports(program, notes) ?? [];
  if (trial === undefined || others.length > 0) throw new Error("one encoder is noted");
  return {
    said: trial.notUnderstood.map(({ message }) => message),
    faults: trial.faults.map(({ kind, at: { first, last } }) => [kind, text.slice(first.start, last.end)]),
  };
}

const handed = (x?: string) =>
  `${start}${note("send")}void report(int8_t x, int8_t y, uint8_t b, void (*send)(uint8_t)) {${bytes("send", x)}`;

describe("an encoder that calls what it is handed", () => {
  it.each([
    ["a pointer to a function", "main.c", handed()],
    [
      "a reference to a function",
      "main.cpp",
      `${start}${note("send")}void report(int8_t x, int8_t y, uint8_t b, void (&send)(uint8_t)) {${bytes("send")}`,
    ],
    [
      "a pointer of a named type, to a function that takes an object as well",
      "main.c",
      `${start}struct port;
typedef int (*sender)(struct port *to, uint8_t byte);
${note("send")}void report(struct port *to, sender send, int8_t x, int8_t y, uint8_t b) {${bytes("send").replaceAll("send(", "send(to, ")}`,
    ],
    [
      "a pointer in an object that it is handed",
      "main.c",
      `${start}struct line { uint8_t number; void (*put)(uint8_t); };
${note("line.put")}void report(const struct line *line, int8_t x, int8_t y, uint8_t b) {${bytes("line->put")}`,
    ],
    [
      "a pointer at file level",
      "main.c",
      `${start}void (*send)(uint8_t);\n${note("send")}void report(int8_t x, int8_t y, uint8_t b) {${bytes("send")}`,
    ],
    [
      "a pointer to a function that takes all bytes at once",
      "main.c",
      `${start}${note("write")}void report(int8_t x, int8_t y, uint8_t b, void (*write)(const uint8_t *, uint8_t)) {
  const uint8_t out[3] = {0x40 | (b & 1) << 5 | (b & 2) << 3 | (y >> 4 & 0x0C) | (x >> 6 & 0x03), x & 0x3F, y & 0x3F};
  write(out, 3);
}
`,
    ],
  ])("%s", (_, file, text) => {
    expect(tried(file, text)).toEqual({ said: [], faults: [] });
  });

  it("is called by its name, with an object that the bytes go to", () => {
    const text = `${start}struct port;
void put(struct port *to, uint8_t byte);
${note("put")}void report(struct port *to, int8_t x, int8_t y, uint8_t b) {${bytes("put").replaceAll("put(", "put(to, ")}`;
    expect(tried("main.c", text)).toEqual({ said: [], faults: [] });
  });

  it("is called by its name, which is that of a method too", () => {
    // Serial, as every Print of the sketch core, has a method write.
    const text = `// @wire board atmega328p clock=16MHz
void write(byte value) { Serial.write(value); }
${note("write")}void report(int8_t x, int8_t y, byte b) {${bytes("write")}`;
    expect(tried("adapter.ino", text)).toEqual({ said: [], faults: [] });
  });

  it("is blamed for the byte that it hands on", () => {
    expect(tried("main.c", handed("x & 0x1F"))).toEqual({ said: [], faults: [["layout", "x & 0x1F"]] });
  });
});
