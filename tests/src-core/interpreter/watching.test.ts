import { describe, expect, it } from "vitest";
import { machineOf, type Ran } from "./machine-of.ts";

function addressOf(ran: Ran, name: string): number {
  const variable = ran.program.variables.find((each) => each.name === name);
  const address = variable && ran.machine.addressOf(variable);
  if (address === undefined) throw new Error(`no object ${name}`);
  return address;
}

describe("watched bytes", () => {
  it("list every write with the value that it leaves and the expression that it is of", () => {
    const ran = machineOf(`
      unsigned char out[3];
      void f(unsigned char left) { out[0] = 0x40; out[0] |= left << 5; out[2] = left + 1; }`);
    const start = addressOf(ran, "out");
    ran.machine.watch(start, 3);
    ran.call("f", 1);
    const listed = ran.machine
      .takeWritten()
      .map(({ address, value, at }) => [address - start, value, at && ran.textAt(at)]);
    expect(listed).toEqual([
      [0, 0x40, "0x40"],
      [0, 0x60, "out[0] |= left << 5"],
      [2, 2, "left + 1"],
    ]);
    expect(ran.machine.takeWritten()).toEqual([]);
  });

  it("can be read, and be written as part of an object", () => {
    const ran = machineOf(`
      struct report { unsigned char a, b; } out;
      void f(void) { struct report made = { 7, 9 }; out = made; out.b += out.a; }`);
    ran.machine.watch(addressOf(ran, "out"), 2);
    ran.call("f");
    expect(ran.machine.takeWritten().map(({ value }) => value)).toEqual([7, 9, 16]);
    expect(ran.machine.missteps).toEqual([]);
  });
});

describe("what is kept", () => {
  it("comes back: globals, static locals and their first values, the heap", () => {
    const ran = machineOf(`
      #include <stdlib.h>
      int total = 5;
      char *block;
      int f(int n) { static int calls; calls += 1; total += n; if (!block) block = malloc(4); *block = 3; return total * 10 + calls; }`);
    const restore = ran.machine.keep();
    expect(ran.call("f", 2)).toEqual({ kind: "returned", value: 71 });
    expect(ran.call("f", 2)).toEqual({ kind: "returned", value: 92 });
    restore();
    expect(ran.call("f", 2)).toEqual({ kind: "returned", value: 71 });
    expect(ran.machine.missteps).toEqual([]);
  });
});

describe("a function that something else is run for", () => {
  it("is told its arguments, where the last one stands and what object that reads", () => {
    const seen: unknown[] = [];
    const text = `
      void put(unsigned char byte);
      unsigned char out[2];
      void f(unsigned char b) { put(b | 0x80); for (int i = 0; i < 2; i++) { out[i] = b + i; put(out[i]); } }`;
    const ran = machineOf(text, {
      instead: ({ name }) =>
        name !== "put"
          ? undefined
          : ([byte], _memory, { argument, readsFrom }) => {
              seen.push([
                byte,
                argument && text.slice(argument.first.start, argument.last.end),
                readsFrom > 0,
              ]);
              return undefined;
            },
    });
    expect(ran.call("f", 4).kind).toBe("returned");
    expect(seen).toEqual([
      [0x84, "b | 0x80", false],
      [4, "out[i]", true],
      [5, "out[i]", true],
    ]);
  });

  it("may have a body of its own, and be called through a pointer", () => {
    const sum: number[] = [];
    const ran = machineOf(
      `static void put(char c) { (void)c; for (;;) ; }
       void (*way)(char) = put;
       void f(void) { put(1); way(2); }`,
      { instead: ({ name }) => (name === "put" ? ([c]) => void sum.push(Number(c)) : undefined) },
    );
    expect(ran.call("f").kind).toBe("returned");
    expect(sum).toEqual([1, 2]);
  });
});
