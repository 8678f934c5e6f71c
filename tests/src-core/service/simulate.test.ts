import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import type { SimulatedRun, SimulationChoice } from "../../../src-core/simulation-result.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();
const usual: SimulationChoice = { stroke: "nudge", mouse: undefined, pc: undefined, seed: 1 };
const settings = readFileSync("sample-workspace/ferry-c/edgewise.json", "utf8");

function simulate(files: Readonly<Record<string, string>>, choice: Partial<SimulationChoice> = {}) {
  const service = createService({ host: hostOfFiles(files), grammar, startName: "adapter" });
  const [project] = service.projectsAt(".");
  return service.simulate(project?.id ?? "", { ...usual, ...choice });
}

function runOf(
  files: Readonly<Record<string, string>>,
  choice: Partial<SimulationChoice> = {},
): SimulatedRun {
  const result = simulate(files, choice);
  if (result.kind === "cannot") throw new Error(result.message);
  return result.run;
}

function sample(name: string): Readonly<Record<string, string>> {
  const folder = `sample-workspace/${name}`;
  return Object.fromEntries(
    readdirSync(folder).map((file) => [file, readFileSync(`${folder}/${file}`, "utf8")]),
  );
}

const main = (text: string) => ({
  "main.c": `#include <avr/io.h>\n#include <avr/interrupt.h>\n${text}`,
  "edgewise.json": settings,
});

describe("the sample firmware, run whole from reset", () => {
  const ferry = sample("ferry-c");

  it("brings every count and click of a stroke to the PC", () => {
    const run = runOf(ferry, { stroke: "all-at-once" });
    expect(run.stopped).toBeUndefined();
    expect(run.verdict.failures).toEqual([]);
    const { counts, clicks, identifications } = run.verdict.figures;
    for (const { in: given, out } of counts ?? []) expect(out).toBe(given);
    expect(clicks?.in).toBeGreaterThan(0);
    expect(clicks?.out).toBe(clicks?.in);
    // "M" within its time, as PROTOCOL.TXT of a DOS mouse driver has it.
    expect(identifications.map(({ bytes }) => bytes)).toEqual([[0x4d]]);
    expect(run.received.at(-1)).toEqual(run.sent.at(-1));
  });

  it("does the same to the last edge with the same seed, and not with another", () => {
    const choice = { mouse: "jittering-clock" };
    const one = runOf(ferry, { ...choice, seed: 7 });
    expect(runOf(ferry, { ...choice, seed: 7 })).toEqual(one);
    expect(runOf(ferry, { ...choice, seed: 8 }).details.edges).not.toEqual(one.details.edges);
  });
});

describe("the sample sketch, run whole from reset on the sketch core", () => {
  it.each([
    ["circle", "plain"],
    ["wheel", "wheel"],
    ["all-at-once", "clock-at-16-7-khz"],
    ["click", "asks-for-resend"],
  ])("brings the stroke %s of the mouse %s to the PC", (stroke, mouse) => {
    const run = runOf(sample("ferry-sketch"), { stroke, mouse });
    expect(run.stopped).toBeUndefined();
    expect(run.verdict.failures).toEqual([]);
    const { counts, clicks, identifications } = run.verdict.figures;
    for (const { in: given, out } of counts ?? []) expect(out).toBe(given);
    expect(clicks?.out).toBe(clicks?.in);
    // 'M', 'Z', '@' and three zeros, as the sketch has it.
    expect(identifications.map(({ bytes }) => bytes)).toEqual([[0x4d, 0x5a, 0x40, 0, 0, 0]]);
    expect(run.received.at(-1)).toEqual(run.sent.at(-1));
  });

  it("fails with its planted faults: pin 5 has no interrupt, so nothing is ever received", () => {
    const { verdict, strokeBegan } = runOf(sample("ferry-sketch-faults"));
    expect(strokeBegan).toBe(false);
    expect(verdict.failures.map(({ rule }) => rule)).toEqual(["ps2/wait-forever"]);
  });
});

describe("a firmware that does not do its work is told by a verdict", () => {
  it.each([
    ["that never starts", "int main(void) { for (;;) { } }", "ps2/wait-forever"],
    [
      "that writes both wires high",
      "int main(void) { PORTD |= 0x0C; DDRD |= 0x0C; for (;;) { } }",
      "ps2/line-driven-high",
    ],
    [
      "that floods the line",
      `int main(void) {
        UBRR0 = 832; UCSR0B = _BV(TXEN0); UCSR0C = _BV(UCSZ01);
        for (;;) { while (!(UCSR0A & _BV(UDRE0))) { } UDR0 = 'M'; }
      }`,
      "serial/throughput",
    ],
    ["that rests the line at space", "int main(void) { DDRD |= 2; for (;;) { } }", "serial/idle-level"],
    [
      "that leaves the PC without an answer",
      "int main(void) { UBRR0 = 832; UCSR0B = _BV(TXEN0); DDRD |= 4; DDRD &= ~4; while (PIND & 4) { } for (;;) { } }",
      "serial/ident-missing",
    ],
  ])("one %s", (_, text, rule) => {
    const { verdict } = runOf(main(text));
    expect(verdict.failures.map((failure) => failure.rule)).toContain(rule);
  });
});

describe("code that goes no further is told with its place", () => {
  it.each([
    ["main returns", "int main(void) { DDRD |= 2; return 0; }", "`main` returned"],
    ["inline assembly", 'int main(void) { __asm__ volatile("break"); return 0; }', "inline assembly `break`"],
    [
      "calls without end",
      "int f(int n) { return f(n + 1) + 1; } int main(void) { return f(0); }",
      "calls within calls",
    ],
    [
      "an interrupt without a handler",
      "int main(void) { TIMSK0 = 1; TCCR0B = 1; sei(); for (;;) { } }",
      "TIMER0_OVF_vect has no handler",
    ],
    ["neither main nor setup", "int begin(void) { return 0; }", "there is no `"],
  ])("%s", (_, text, message) => {
    expect(runOf(main(text)).stopped?.message).toContain(message);
  });
});

describe("what has to be said first is said in one sentence", () => {
  it.each([
    ["the chip", { "main.c": "int main(void) { return 0; }" }, "the chip is not known"],
    [
      "the clock",
      { "main.c": "// @wire board atmega328p\nint main(void) { return 0; }" },
      "the clock is not known",
    ],
    [
      "the layout",
      { "main.c": "// @wire board atmega328p clock=16MHz\nint main(void) { return 0; }" },
      "the layout of the reports is not known",
    ],
    [
      "the pins",
      {
        "main.c":
          "// @wire board atmega328p clock=16MHz\n// @wire serial uart=0 report=two-button\nint main(void) { return 0; }",
      },
      "the wiring is not known: ps2 clock, ps2 data",
    ],
  ])("%s", (_, files, message) => {
    expect(simulate(files)).toEqual({ kind: "cannot", message: expect.stringContaining(message) });
  });

  it.each([
    [{ stroke: "circl" }, 'there is no stroke "circl"; did you mean circle?'],
    [{ mouse: "plian" }, 'there is no mouse "plian"; did you mean plain?'],
    [{ pc: "rts-togle" }, 'there is no PC "rts-togle"; did you mean rts-toggle?'],
  ])("a name that there is not: %o", (choice, message) => {
    expect(simulate(main("int main(void) { return 0; }"), choice)).toEqual({ kind: "cannot", message });
  });
});
