import { describe, expect, test } from "vitest";
import { CodeTrace } from "../../../../src-core/bench/engines/code-trace.ts";
import { place } from "../verdicts/place.ts";

const US = 1e6;

/** A trace whose time a test sets; `span` calls a function that does nothing else for so long. */
function traced(mostSpans?: number) {
  let now = 0;
  const trace = new CodeTrace((untold) => now + untold * US, mostSpans);
  const enter = (qualifiedName: string): void =>
    trace.entered({ qualifiedName, vector: undefined, at: place(1) }, 0);
  return {
    trace,
    enter,
    wait: (us: number): void => {
      now += us * US;
    },
    span: (name: string, us: number): void => {
      enter(name);
      now += us * US;
      trace.left(0);
    },
    told: () =>
      trace.record.spans.map(({ name, depth, from, to, calls }) => [name, depth, from / US, to / US, calls]),
  };
}

describe("what ran when", () => {
  test("a function, those that it calls, and cycles that the chip does not know of yet", () => {
    const { trace, enter, wait, span, told } = traced();
    enter("main");
    wait(5);
    span("listen", 10);
    wait(100);
    trace.left(3);
    expect(told()).toEqual([
      ["listen", 1, 5, 15, 1],
      ["main", 0, 0, 118, 1],
    ]);
  });

  test("an interrupt and what it calls are counted by themselves", () => {
    const { trace, enter, wait, span } = traced();
    enter("main");
    enter("wait_here");
    trace.interrupted("INT0_vect");
    span("take_bit", 4);
    wait(1);
    trace.resumed();
    trace.left(0);
    trace.left(0);
    const told = trace.record.spans.map(({ name, kind, depth, interrupting }) => [
      name,
      kind,
      depth,
      interrupting,
    ]);
    expect(told).toEqual([
      ["take_bit", "function", 1, true],
      ["INT0_vect", "interrupt", 0, true],
      ["wait_here", "function", 1, false],
      ["main", "function", 0, false],
    ]);
  });

  test("a handler of the program's own is known by its vector", () => {
    const { trace, enter, wait, told } = traced();
    enter("main");
    trace.entered({ qualifiedName: "__vector_1", vector: "INT0_vect", at: place(9) }, 0);
    wait(7);
    trace.left(0);
    trace.left(0);
    expect(trace.record.spans[0]).toMatchObject({ kind: "interrupt", interrupting: true, at: place(9) });
    expect(told()).toEqual([
      ["INT0_vect", 0, 0, 7, 1],
      ["main", 0, 0, 7, 1],
    ]);
  });

  // 20 us: our own choice, a quarter of the period of a mouse's clock.
  test("calls with pauses of up to 20 us are one span, with longer ones two", () => {
    const { wait, span, told } = traced();
    span("look", 2);
    wait(20);
    span("look", 2);
    wait(21);
    span("look", 2);
    expect(told()).toEqual([
      ["look", 0, 0, 24, 2],
      ["look", 0, 45, 47, 1],
    ]);
  });

  test("more spans than there is room for are told more coarsely, and every call is counted", () => {
    const { trace, wait, span } = traced(100);
    for (let call = 0; call < 1000; call += 1) {
      span("look", 2);
      wait(call % 2 === 0 ? 30 : 200);
    }
    const { spans, resolution } = trace.record;
    expect(spans.length).toBeLessThanOrEqual(100);
    expect(spans.reduce((sum, { calls }) => sum + calls, 0)).toBe(1000);
    expect(resolution).toBeGreaterThan(20 * US);
    expect(spans.at(0)?.from).toBe(0);
  });
});
