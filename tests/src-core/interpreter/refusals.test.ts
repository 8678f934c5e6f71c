import { describe, expect, it } from "vitest";
import { machineOf, type Ran } from "./machine-of.ts";

function refusalOf(ran: Ran, name: string, ...parameters: readonly number[]) {
  const outcome = ran.call(name, ...parameters);
  if (outcome.kind !== "stopped") throw new Error("it was not stopped");
  const { reason, message, at } = outcome.stop;
  expect(reason).toBe("cannot-run");
  return [message, at && ran.textAt(at)];
}

describe("a function that is declared and not defined is reported where it is called", () => {
  const missing = (name: string) => `cannot run: \`${name}\`, which is declared and not defined`;

  it("by its name, and only when it is", () => {
    const ran = machineOf("int read(int); int f(int n) { return n ? 1 + read(n) : 0; }");
    expect(ran.call("f", 0)).toEqual({ kind: "returned", value: 0 });
    expect(refusalOf(ran, "f", 1)).toEqual([missing("read"), "read(n)"]);
  });

  it("through a pointer", () => {
    const ran = machineOf("int read(int); int (*pointer)(int) = read; int f(void) { return pointer(3); }");
    expect(refusalOf(ran, "f")).toEqual([missing("read"), "pointer(3)"]);
  });

  it("as a constructor, a destructor, a member, an operator", () => {
    const text = `
struct Line { Line(int); ~Line(); };
struct Wire { int n; int level() const; Wire operator+(int) const; virtual int edge(); };
void make() { Line line(2); }
int levelOf(int n) { Wire w = {}; return w.level() + n; }
int sum(int n) { Wire w; return (w + n).n; }
int edgeOf(Wire *w) { return w->edge(); }
int f() { Wire w; return edgeOf(&w); }`;
    const ran = machineOf(text, {}, "c++");
    expect(refusalOf(ran, "make")[0]).toBe(missing("Line::Line"));
    expect(refusalOf(ran, "levelOf", 1)).toEqual([missing("Wire::level"), "w.level()"]);
    expect(refusalOf(ran, "sum", 1)).toEqual([missing("Wire::operator+"), "w + n"]);
    expect(refusalOf(ran, "f")).toEqual([missing("Wire::edge"), "w->edge()"]);
  });
});

describe("what the target does cannot be told", () => {
  // The core's WString.cpp copies with strcpy onto the text's own terminating zero.
  it("a string appended to itself", () => {
    const ran = machineOf("void f() { String s = \"ab\"; s += 'c'; s += s; }", {}, "sketch");
    expect(refusalOf(ran, "f")).toEqual(["cannot run: a string appended to itself", "s += s"]);
  });
});

it("temporary objects of a run that was stopped are not ended by the next", () => {
  const text = `
int ended;
struct Guard { int n; explicit Guard(int k) : n(k) {} ~Guard() { ended += n; } };
int stop(const Guard &) { asm("spm"); return 1; }
int f(int n) { return n ? stop(Guard(n)) : Guard(100).n; }
int count() { return ended; }`;
  const ran = machineOf(text, {}, "c++");
  expect(refusalOf(ran, "f", 1)[0]).toContain("inline assembly");
  expect(ran.call("f", 0)).toEqual({ kind: "returned", value: 100 });
  expect(ran.call("count")).toEqual({ kind: "returned", value: 100 });
});
