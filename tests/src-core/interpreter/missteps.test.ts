import { describe, expect, it } from "vitest";
import { machineOf } from "./machine-of.ts";

/**
 * Undefined behaviour (C11 Annex J.2). The values with which a run goes on are those of avr-gcc's code: its arithmetic
 * wraps, its division by zero gives all ones (division loop of libgcc's lib1funcs.S, from memory).
 */
const cases = {
  "signed-overflow": ["int f(int a) { return a + 1; }", [32767], -32768, "a + 1"],
  "division-by-zero": ["unsigned f(unsigned a) { return 7u / a; }", [0], 65535, "7u / a"],
  "shift-amount": ["int f(int a) { return 1 << a; }", [16], 0, "1 << a"],
  "out-of-bounds": ["unsigned char t[3] = {1, 2, 3}, u; int f(int i) { return t[i]; }", [3], 0, "t[i]"],
  "null-pointer": ["int f(int *p) { return *p; }", [0], 0, "*p"],
  uninitialized: ["int f(int n) { int v; if (n) v = 1; return v; }", [0], 0, "v"],
} as const;

describe("undefined behaviour is noted with its place, and the run goes on", () => {
  for (const [kind, [text, parameters, value, place]] of Object.entries(cases)) {
    it(kind, () => {
      const ran = machineOf(text);
      expect(ran.call("f", ...parameters)).toEqual({ kind: "returned", value });
      const [first] = ran.machine.missteps;
      expect(first?.kind).toBe(kind);
      expect(first && ran.textAt(first.at)).toBe(place);
    });
  }

  it("what is right is not noted", () => {
    const ran = machineOf(
      "int t[3]; int *f(int n) { unsigned u = 65535u; u += n; return t + (n == 1 ? 3 : u); }",
    );
    ran.call("f", 1);
    expect(ran.machine.missteps).toEqual([]);
  });
});

describe("who wrote a byte", () => {
  it("is the expression whose value it holds", () => {
    const ran = machineOf("unsigned char report[2]; void f(int x) { report[1] = 0x40 | (x & 3); }");
    ran.call("f", 2);
    const report = ran.program.variables.find(({ name }) => name === "report");
    const address = report && ran.machine.addressOf(report);
    if (address === undefined) throw new Error("no report");
    expect(ran.machine.memory.readByte(address + 1)).toBe(0x42);
    const writer = ran.machine.writerOf(address + 1);
    expect(writer && ran.textAt(writer)).toContain("0x40 | (x & 3)");
    expect(ran.machine.writerOf(address)).toBeUndefined();
  });
});
