import { describe, expect, it } from "vitest";
import { tryReports } from "../../../src-core/reports/try-reports.ts";
import { factsOf } from "../checks/harness.ts";

// Bytes are worked out by hand from the table of the three-byte packet in mouse(4), Linux man-pages: 1 L R Y7 Y6 X7 X6,
// 0 X5..X0, 0 Y5..Y0, y growing downwards as PROTOCOL.TXT says.

/** What is found wrong with the functions of a C file: kind, source text to blame, example. */
function faultsIn(text: string) {
  const { program, notes } = factsOf({
    "main.c": `// @wire board atmega328p clock=16MHz\n#include <stdint.h>\n${text}`,
  });
  const whole = `// @wire board atmega328p clock=16MHz\n#include <stdint.h>\n${text}`;
  return tryReports(program, notes)?.flatMap(({ faults }) =>
    faults.map(({ kind, what, at, example: { given, came, right } }) => ({
      kind,
      what,
      at: whole.slice(at.first.start, at.last.end),
      example: `${given}: ${came}, not ${right}`,
    })),
  );
}

describe("a fault is told by its smallest example", () => {
  it("a bit that is not masked", () => {
    expect(
      faultsIn(`
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x7F;
  out[2] = dy & 0x3F;
}`),
    ).toEqual([
      {
        kind: "sync-bit",
        what: "bit 6 of byte 2 has to be 0, and x reaches it",
        at: "dx & 0x7F",
        example: "dx=-1: 43 7F 00, not 43 3F 00",
      },
    ]);
  });

  it("the movement from which on it folds over", () => {
    expect(
      faultsIn(`
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into out
void encode(uint8_t *out, int dx, int8_t dy, uint8_t b) {
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = dy & 0x3F;
}`),
    ).toEqual([
      {
        kind: "clip-missing",
        what: "x is not clipped to what a two-button report carries, -128 to 127",
        at: "dx & 0x3F",
        example: "dx=128: 42 00 00, not 41 3F 00",
      },
    ]);
  });

  it("a sign that is spread over the whole byte", () => {
    // -1 >> 6 is -1: it sets both buttons and the high bits of y.
    expect(
      faultsIn(`
// @wire encodes two-button from x=dx y=dy left=l right=r into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t l, uint8_t r) {
  uint8_t y = dy;
  out[0] = 0x40 | l << 5 | r << 4 | (y >> 6) << 2 | (dx >> 6);
  out[1] = dx & 0x3F;
  out[2] = y & 0x3F;
}`),
    ).toEqual([
      {
        kind: "layout",
        what: "bit 5 of byte 1 has to be left, and x reaches it",
        at: "dx >> 6",
        example: "dx=-1: FF 3F 00, not 43 3F 00",
      },
    ]);
  });

  it("buttons set one by one, in each other's places", () => {
    expect(
      faultsIn(`
// @wire encodes two-button from x=dx y=dy left=l right=r into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t l, uint8_t r) {
  out[0] = 0x40;
  if (l) out[0] |= 0x10;
  if (r) out[0] |= 0x20;
  out[0] |= (dy & 0xC0) >> 4;
  out[0] |= (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = dy & 0x3F;
}`),
    ).toEqual([
      {
        kind: "button-map",
        what: "bit 5 of byte 1 has to be left and is right",
        at: "0x20",
        example: "r=1: 60 00 00, not 50 00 00",
      },
    ]);
  });
});

it("a decoder that turns y over is told which way it grows, as the document of the mouse's report says it", () => {
  // HT82M35X data sheet, p. 3: y counts up; bit 5 of the first byte is its sign.
  expect(
    faultsIn(`
// @wire decodes ps2-standard from p into y=dy
void take(const uint8_t *p, int16_t *dy) {
  *dy = (p[0] & 0x20 ? 256 : 0) - p[2];
}`),
  ).toEqual([
    {
      kind: "y-direction",
      what: "y counts the wrong way: in a ps2-standard report it grows upwards",
      at: "(p[0] & 0x20 ? 256 : 0) - p[2]",
      example: "28 00 FF: y=1, not y=-1",
    },
  ]);
});

/** An encoder whose first byte is written by `first`, in a global array. */
const inGlobal = (first: string, others = "") => `
static uint8_t packet[3];
void send_all(const uint8_t *bytes, uint8_t count);
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into packet
void encode(int8_t dx, int8_t dy, uint8_t b) {
  ${first} 0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  packet[1] = dx & 0x3F;
  packet[2] = dy & 0x3F;
}
${others}`;

describe("bits that are left over from the report before", () => {
  it("are told with both reports", () => {
    // `|=` keeps the bits that are set (ISO C11 6.5.16.2).
    expect(
      faultsIn(inGlobal("packet[0] |=", "void f(void) { encode(1, 2, 1); send_all(packet, 3); }")),
    ).toEqual([
      {
        kind: "button-map",
        what: "bit 5 of byte 1 keeps what the report before had in it",
        at: "packet[0] |= 0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6",
        example: "all at rest after b.0=1: 60 00 00, not 40 00 00",
      },
    ]);
  });

  it.each([
    ["written anew", "packet[0] =", ""],
    ["cleared first", "packet[0] = 0; packet[0] |=", ""],
    ["cleared by the caller", "packet[0] |=", "void f(void) { packet[0] = 0; encode(1, 2, 1); }"],
    [
      "cleared by a function that is handed the array",
      "packet[0] |=",
      "void clear(uint8_t *bytes); void f(void) { clear(packet); encode(1, 2, 1); }",
    ],
    [
      "cleared through a pointer",
      "packet[0] |=",
      "void f(void) { uint8_t *p = packet; *p = 0; encode(1, 2, 1); }",
    ],
    ["a constant that stays", "packet[0] = (packet[0] & 0x40) |", ""],
  ])("are none where the byte is %s", (_, first, others) => {
    expect(faultsIn(inGlobal(first, others))).toEqual([]);
  });

  it("are none in an array that the caller hands in, who may have cleared it", () => {
    const text = inGlobal("packet[0] |=").replace("static uint8_t packet[3];", "");
    expect(faultsIn(text.replace("encode(", "encode(uint8_t *packet, "))).toEqual([]);
  });

  it("are none where what is left over of a movement goes into the next report on purpose", () => {
    expect(
      faultsIn(`
static uint8_t packet[3];
static int16_t rest_x;
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into packet
void encode(int16_t dx, int8_t dy, uint8_t b) {
  rest_x += dx;
  int8_t x = rest_x > 60 ? 60 : rest_x < -60 ? -60 : rest_x;
  rest_x -= x;
  packet[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (x & 0xC0) >> 6;
  packet[1] = x & 0x3F;
  packet[2] = dy & 0x3F;
}`),
    ).toEqual([]);
  });
});

it("a button whose bit follows it only in some sets, or follows a movement, is told in these words", () => {
  // By hand: 0x20 is left and 0x10 right; a set of both is 0x30.
  const wrong = (first: string): readonly string[] | undefined =>
    faultsIn(`
static const uint8_t both_as_left[4] = { 0x00, 0x20, 0x10, 0x20 };
static const uint8_t left_as_both[4] = { 0x00, 0x30, 0x10, 0x30 };
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = 0x40 | ${first} | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = dy & 0x3F;
}`)?.map(({ what }) => what);
  expect(wrong("both_as_left[b & 3]")).toEqual([
    "bit 4 of byte 1 has to be right and does not always follow it",
  ]);
  expect(wrong("left_as_both[b & 3]")).toEqual(["bit 4 of byte 1 has to be right, and left reaches it"]);
  expect(wrong("(b & 1) << 5 | (dx & 1) << 4")).toEqual(["bit 4 of byte 1 has to be right and is x0"]);
});

it("bytes that go to a method of an object are seen", () => {
  // -1 / 64 is 0, as C rounds towards zero (ISO C11 6.5.5p6), and the two high bits of -1 are 11.
  const sketch = `// @wire board atmega328p clock=16MHz
// @wire encodes two-button from x=x y=y left=l right=r into Serial.write
void tell(int8_t x, int8_t y, bool l, bool r) {
  Serial.write(0x40 | l << 5 | r << 4 | (y & 0xC0) >> 4 | (x / 64 & 3));
  Serial.write(x & 0x3F);
  Serial.write(y & 0x3F);
}
`;
  const { program, notes } = factsOf({ "main.ino": sketch });
  expect(notes.problems).toEqual([]);
  const [trial] = tryReports(program, notes) ?? [];
  expect(trial?.notUnderstood).toEqual([]);
  expect(
    trial?.faults.map(({ kind, at, example }) => [
      kind,
      sketch.slice(at.first.start, at.last.end),
      example.came,
    ]),
  ).toEqual([["sign-lost", "x / 64 & 3", "40 3F 00"]]);
});

describe("bytes that go to an object that the encoder was given are seen", () => {
  // As above: -1 / 64 is 0 (ISO C11 6.5.5p6).
  const body = (port: string): string => `
    ${port}write(0x40 | l << 5 | r << 4 | (y & 0xC0) >> 4 | (x / 64 & 3));
    ${port}write(x & 0x3F);
    ${port}write(y & 0x3F);`;
  const note = "// @wire encodes two-button from x=x y=y left=l right=r into";

  it.each([
    [
      "a reference member",
      `struct Adapter {
  Stream &port;
  explicit Adapter(Stream &given) : port(given) {}
  ${note} port.write
  void tell(int8_t x, int8_t y, bool l, bool r) {${body("port.")}
  }
};
Adapter adapter(Serial);`,
    ],
    [
      "a pointer member",
      `struct Adapter {
  Print *port;
  explicit Adapter(Print *given) : port(given) {}
  ${note} port->write
  void tell(int8_t x, int8_t y, bool l, bool r) {${body("port->")}
  }
};
Adapter adapter(&Serial);`,
    ],
    [
      "a reference",
      `${note} port.write\nvoid tell(Print &port, int8_t x, int8_t y, bool l, bool r) {${body("port.")}\n}`,
    ],
    [
      "an object of a class of the author's own",
      `class Line : public Print {
 public:
  uint8_t last;
  size_t write(uint8_t byte) override { last = byte; return 1; }
};
Line line;
${note} port.write
void tell(Print &port, int8_t x, int8_t y, bool l, bool r) {${body("port.")}
}`,
    ],
  ])("%s", (_, text) => {
    const sketch = `// @wire board atmega328p clock=16MHz\n${text}\n`;
    const { program, notes } = factsOf({ "main.ino": sketch });
    expect(notes.problems).toEqual([]);
    const [trial] = tryReports(program, notes) ?? [];
    expect(trial?.notUnderstood).toEqual([]);
    expect(
      trial?.faults.map(({ kind, at, example }) => [
        kind,
        sketch.slice(at.first.start, at.last.end),
        example.came,
      ]),
    ).toEqual([["sign-lost", "x / 64 & 3", "40 3F 00"]]);
  });
});

describe("what is no fault", () => {
  it("sending nothing while there is nothing to tell", () => {
    expect(
      faultsIn(`
void send_byte(uint8_t byte);
static uint8_t was_l, was_r;
// @wire encodes two-button from x=dx y=dy left=l right=r into send_byte
void send_report(int8_t dx, int8_t dy, uint8_t l, uint8_t r) {
  if (dx == 0 && dy == 0 && l == was_l && r == was_r) return;
  was_l = l;
  was_r = r;
  send_byte(0x40 | l << 5 | r << 4 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6);
  send_byte(dx & 0x3F);
  send_byte(dy & 0x3F);
}`),
    ).toEqual([]);
  });
});
