import { describe, expect, it } from "vitest";
import type { Outcome } from "../../../src-core/interpreter/outcome.ts";
import { machineOf } from "./machine-of.ts";

function stopOf(outcome: Outcome) {
  if (outcome.kind !== "stopped") throw new Error("it was not stopped");
  return outcome.stop;
}

describe("a run that would not end is stopped, and says where", () => {
  it("an endless loop, after the steps that are allowed", () => {
    const ran = machineOf("void f(void) { for (;;) ; }", { limits: { steps: 10_000, depth: 10 } });
    const { reason, at } = stopOf(ran.call("f"));
    expect(reason).toBe("steps");
    expect(at && ran.textAt(at)).toContain("for (;;)");
  });

  it("calls within calls", () => {
    const ran = machineOf("int f(int n) { return f(n + 1) + 1; }");
    expect(stopOf(ran.call("f", 0)).reason).toBe("recursion");
  });

  it("a stack that fills memory", () => {
    const ran = machineOf(
      "int f(int n) { volatile char big[2000]; big[0] = n; return n ? f(n - 1) + big[0] : 0; }",
    );
    expect(stopOf(ran.call("f", 100)).reason).toBe("memory");
  });

  it("an object that does not fit", () => {
    const ran = machineOf("char huge[60000]; char f(int i) { return huge[i]; }");
    expect(stopOf(ran.call("f", 1)).reason).toBe("memory");
  });

  it("on request", () => {
    const ran = machineOf("void f(void) { for (;;) ; }", { cancelled: () => true });
    expect(stopOf(ran.call("f")).reason).toBe("cancelled");
  });

  it("and can be run again afterwards", () => {
    const ran = machineOf("int f(int n) { while (n < 0) ; return n * 2; }");
    expect(stopOf(ran.call("f", -1)).reason).toBe("steps");
    expect(ran.call("f", 21)).toEqual({ kind: "returned", value: 42 });
  });
});

describe("what cannot be run is refused where it stands", () => {
  it("inline assembly that is more than a wait", () => {
    const ran = machineOf('int f(void) { asm("swap r24"); return 1; }');
    const { reason, message, at } = stopOf(ran.call("f"));
    expect([reason, message]).toEqual(["cannot-run", expect.stringContaining("cannot run: inline assembly")]);
    expect(at && ran.textAt(at)).toContain("swap r24");
  });

  it("only when it is reached", () => {
    const ran = machineOf('int f(int n) { if (n) asm("swap r24"); return 1; }');
    expect(ran.call("f", 0)).toEqual({ kind: "returned", value: 1 });
  });
});
