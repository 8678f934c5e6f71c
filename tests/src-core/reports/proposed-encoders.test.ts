import { describe, expect, it } from "vitest";
import type { Example } from "../../../src-core/checks/rule.ts";
import { proposeEncoders } from "../../../src-core/reports/unnoted/propose-encoders.ts";
import { factsOf } from "../checks/harness.ts";
import { rightEncoders } from "./corpus.ts";
import { rightDecoders } from "./right-decoders.ts";

const noteOfReport = /@wire ((?:en|de)codes [^\n]*?)\s*(?:\*\/|\n)/;

/** The note of an encoder as its author wrote it, and the same code without it. */
function withoutNote(example: Example): { readonly note: string; readonly bare: Example } {
  const [[file, text] = ["", ""]] = Object.entries(example);
  const note = noteOfReport.exec(text)?.[1] ?? "";
  return { note, bare: { [file]: text.replace(`@wire ${note}`, "") } };
}

/** Code that has something of an encoder and is none. */
const others = {
  "a number written in three digits": `
#include <stdint.h>
void digits(uint8_t out[3], uint16_t value, uint8_t base) {
  out[0] = '0' + value / base / base % base;
  out[1] = '0' + value / base % base;
  out[2] = '0' + value % base;
}`,
  "a copy of three bytes": `
#include <stdint.h>
void copy(uint8_t *to, uint8_t a, uint8_t b, uint8_t c) {
  to[0] = a;
  to[1] = b;
  to[2] = c;
}`,
  "a ring that never ends": `
#include <stdint.h>
uint8_t ring[16];
void fill(uint8_t from, uint8_t step) {
  for (uint8_t at = from;; at += step) ring[at & 15] = at;
}`,
};

/** Layout, fields in no order, and where the bytes go. */
function parts(note: string) {
  const [, layout, fields = "", into] = /encodes (\S+) from (.*) into (\S+)/.exec(note) ?? [];
  return { layout, fields: fields.split(" ").toSorted(), into };
}

/** Encoders that are too clever to be recognised: bytes in an object made at once, a movement sent in two halves. */
const notRecognised = ["a struct by value that is filled and given back", "halves"];

describe.each(Object.entries(rightEncoders))(
  "a note is proposed for an encoder without: %s",
  (_, examples) => {
    it.each(Object.entries(examples))("%s", (name, example) => {
      const { note, bare } = withoutNote(example);
      const { program, notes } = factsOf(bare);
      const proposed = proposeEncoders(program, notes)?.map((each) => parts(each.note));
      expect(proposed).toEqual(notRecognised.includes(name) ? [] : [parts(note)]);
    });
  },
);

describe("a note is proposed for a method that writes to the port it was given", () => {
  it.each([
    ["a reference", "Stream &port_", "Stream &port", "port", "port_.write"],
    ["a pointer", "Print *port_", "Print *port", "port", "port_->write"],
  ])("%s", (_, member, parameter, given, into) => {
    const { program, notes } = factsOf({
      "main.ino": `// @wire board atmega328p clock=16MHz
class Adapter {
 public:
  explicit Adapter(${parameter}) : port_(${given}) {}
  void tell(int8_t x, int8_t y, bool l, bool r) {
    ${into}(0x40 | l << 5 | r << 4 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6);
    ${into}(x & 0x3F);
    ${into}(y & 0x3F);
  }
 private:
  ${member};
};
Adapter adapter(${member.includes("*") ? "&Serial" : "Serial"});
`,
    });
    expect(proposeEncoders(program, notes)?.map(({ note }) => note)).toEqual([
      `@wire encodes two-button from x=x y=y left=l right=r into ${into}`,
    ]);
  });
});

describe("no note is proposed", () => {
  it.each(Object.entries(rightDecoders))("for a decoder: %s", (_, example) => {
    const { program, notes } = factsOf(withoutNote(example).bare);
    expect(proposeEncoders(program, notes)).toEqual([]);
  });

  it("for what has one", () => {
    for (const examples of Object.values(rightEncoders)) {
      for (const example of Object.values(examples)) {
        const { program, notes } = factsOf(example);
        expect(proposeEncoders(program, notes)).toEqual([]);
      }
    }
  });

  it.each(Object.entries(others))("for %s", (_, text) => {
    const { program, notes } = factsOf({ "main.c": `// @wire board atmega328p clock=16MHz\n${text}` });
    expect(proposeEncoders(program, notes)).toEqual([]);
  });
});
