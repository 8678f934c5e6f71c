import { describe, expect, it } from "vitest";
import { tryReports } from "../../../src-core/reports/try-reports.ts";
import { factsOf } from "../checks/harness.ts";

/** Runs an encoder with this body and, before it, these declarations; what could not be done is said. */
function triedWith(body: string, before = "", cancelled?: () => boolean) {
  const { program, notes } = factsOf({
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdlib.h>
${before}
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  ${body}
}`,
  });
  return tryReports(program, notes, cancelled);
}

function saidOf(body: string, before = ""): readonly string[] {
  const trials = triedWith(body, before) ?? [];
  return trials.flatMap(({ notUnderstood }) => notUnderstood.map(({ message }) => message));
}

const right = `
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = dy & 0x3F;`;

describe("an encoder that cannot be run to its end is told in one line", () => {
  it.each([
    ["an endless loop", "for (;;) { }", "", "more than 100000 steps"],
    ["waiting for hardware", "while (!busy) { }", "volatile uint8_t busy;", "more than 100000 steps"],
    [
      "calls without end",
      "out[0] = deeper(dx);",
      "uint8_t deeper(uint8_t n) { return deeper(n + 1) + 1; }",
      "calls within calls",
    ],
    [
      "a function that is elsewhere",
      "out[0] = sign(dx);",
      "uint8_t sign(int8_t);",
      "`sign`, which is declared and not defined",
    ],
    ["inline assembly", 'asm("swap r24");', "", "cannot run: inline assembly"],
    ["an object without end", "uint8_t big[40000]; big[dx] = 1; out[0] = big[0];", "", "no memory left"],
  ])("%s", (_, body, before, message) => {
    expect(saidOf(body, before)).toEqual([expect.stringContaining(message)]);
  });
});

describe("undefined behaviour on the way is told, and the report judged all the same", () => {
  it.each([
    ["a pointer astray", `uint8_t *p = (uint8_t *)0x0700; *p = 1; ${right}`, "", "where no object is"],
    ["a null pointer", `uint8_t *p = 0; *p = 1; ${right}`, "", "null pointer"],
    ["a value never given", `uint8_t y; uint8_t z = y; ${right} (void)z;`, "", "never given a value"],
    ["a division by zero", `out[0] = 5 / (dx & 0); ${right}`, "", "zero"],
    ["a heap that is full", `char *p = malloc(60000); p[0] = 1; ${right}`, "", "null pointer"],
  ])("%s", (_, body, before, message) => {
    const [trial] = triedWith(body, before) ?? [];
    expect(trial?.notUnderstood.map((each) => each.message)).toContainEqual(expect.stringContaining(message));
    expect(trial?.faults).toEqual([]);
  });
});

describe("hardware, of which there is none in a trial", () => {
  const io = "#include <avr/io.h>";

  it("is named where a function waits for it", () => {
    expect(saidOf("while (!(UCSR0A & (1 << UDRE0))) { }", io)).toEqual([
      expect.stringContaining(
        "as a loop without end does; it may wait for UCSR0A, which nothing changes in a trial",
      ),
    ]);
  });

  it("is named where the report depends on it", () => {
    expect(saidOf(`if (PIND & 4) dx = -dx; ${right}`, io)).toEqual([
      "while `encode` was tried: the report depends on PIND, taken as 0 where nothing is connected",
    ]);
  });

  it.each([
    ["a pin is switched while the report is built", `PORTB ^= 1; ${right} PORTB ^= 1;`],
    ["interrupts are held off", `uint8_t status = SREG; cli(); ${right} SREG = status;`],
    ["a register is read back", `TCNT0 = 3; dx = TCNT0 == 3 ? dx : 0; ${right}`],
  ])("is nobody's business where %s", (_, body) => {
    expect(saidOf(body, `${io}\n#include <avr/interrupt.h>`)).toEqual([]);
  });
});

describe("a note that contradicts the code is told by its own rule, and what follows from it is not told", () => {
  it.each([
    ["x=dxx y=dy left=b.0 right=b.1 into out", "`encode` has no parameter `dxx`; did you mean `dx`?"],
    ["x=dx y=dy left=b.0 right=b.9 into out", "`b` has bits 0 to 7, so there is no bit 9"],
    ["x=dx y=dy left=b.0 left=b.1 into out", "`left` is said twice in this note"],
  ])("%s", (wiring, message) => {
    const { program, notes } = factsOf({
      "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from ${wiring}
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {${right}
}`,
    });
    expect(notes.problems.map((problem) => problem.message)).toEqual([message]);
    expect(tryReports(program, notes)).toEqual([]);
  });
});

it("a movement that the note leaves out is said not to be checked", () => {
  const { program, notes } = factsOf({
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dx left=b.0 right=b.1 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {${right}
}`,
  });
  const said = tryReports(program, notes)?.flatMap(({ notUnderstood }) =>
    notUnderstood.map(({ message }) => message),
  );
  expect(said).toEqual(["while `encode` was tried: its note does not say what y is, so y is not checked"]);
});

it("a trial is ended on request", () => {
  expect(triedWith(right, "", () => true)).toBeUndefined();
  expect(triedWith("for (;;) { }", "", () => true)).toBeUndefined();
});

it("what drives each bit is found: the layout as in the table of mouse(4)", () => {
  const [trial] = triedWith(right) ?? [];
  const rows = trial?.found.map((slots) =>
    slots
      .map((slot) => {
        if (slot.kind === "constant") return String(slot.level);
        if (slot.kind === "button") return slot.field;
        return slot.kind === "movement" ? `${slot.field}${slot.fieldBit}` : "?";
      })
      .reverse()
      .join(" "),
  );
  expect(rows).toEqual(["1 left right y7 y6 x7 x6", "0 x5 x4 x3 x2 x1 x0", "0 y5 y4 y3 y2 y1 y0"]);
});
