import { describe, expect, it, test } from "vitest";
import type { Clock, Registers } from "../../../src-core/interpreter/outcome.ts";
import { chip as chipNamed } from "../../../src-core/model/chips.ts";
import { machineOf } from "./machine-of.ts";

const chip = chipNamed("atmega328p");
if (chip?.kind !== "avr") throw new Error("no chip");
const addressOf = (name: string): number => {
  const register = chip.registers.find((each) => each.name === name);
  if (register === undefined) throw new Error(`no ${name}`);
  return register.address;
};
const pinB = addressOf("PINB");
const portB = addressOf("PORTB");
const counter = addressOf("TCNT0");

/** Cycles from one change of PINB to the next. */
const period = 10_007;
const end = 40 * period;

interface Watched {
  /** Cycle and value of every write to PORTB. */
  readonly writes: readonly (readonly [cycle: number, value: number])[];
  readonly reads: number;
  readonly cycles: number;
}

/** Runs `main` on a chip whose PINB counts up every period, and whose TCNT0 counts every cycle. */
function run(text: string, runsEveryTurn: boolean): Watched {
  let cycles = 0;
  let reads = 0;
  let happenings = 0;
  const writes: [number, number][] = [];
  const registers: Registers = {
    read: (address) => {
      reads += 1;
      if (address === counter) happenings += 1;
      if (address === counter) return cycles & 0xff;
      return address === pinB ? Math.floor(cycles / period) & 0xff : 0;
    },
    write: (address, value) => {
      happenings += 1;
      if (address === portB) writes.push([cycles, value]);
    },
  };
  const clock: Clock = {
    budget: () => period - (cycles % period),
    pass: (passed) => {
      const before = Math.floor(cycles / period);
      cycles += passed;
      if (Math.floor(cycles / period) !== before) happenings += 1;
      return cycles < end;
    },
    happened: () => happenings,
    runsEveryTurn,
  };
  const ran = machineOf(`#include <avr/io.h>\n#include <stdlib.h>\n${text}`, { clock, registers });
  expect(ran.call("main")).toMatchObject({ kind: "stopped", stop: { reason: "ended" } });
  return { writes, reads, cycles };
}

/** `main` in an endless loop, with what stands before it. */
const forever = (before: string, body: string, locals = ""): string =>
  `${before}\nint main(void) { ${locals} for (;;) { ${body} } }`;

// The reference is the same run with each turn run. `skips` says whether turns may be skipped at all.
const loops: readonly (readonly [what: string, text: string, skips: boolean])[] = [
  ["looks at a pin", forever("", "if (PINB & 1) PORTB = 1;"), true],
  [
    "waits in a while loop",
    forever("", "while (!(PINB & 1)) {} PORTB = 1; while (PINB & 1) {} PORTB = 0;"),
    true,
  ],
  [
    "waits in a do loop",
    forever(
      "",
      "uint8_t seen; do { seen = PINB; } while (!(seen & 2)); PORTB = seen; do ; while (PINB & 2);",
    ),
    true,
  ],
  [
    "has branches and calls",
    forever(
      `
    static uint8_t last; static uint8_t flag;
    static uint8_t news(void) { uint8_t now = PINB; if (now == last) return 0; last = now; return 1; }
    static void tell(uint8_t v) { uint8_t copy[3] = { v, v, 1 }; if (copy[2] && flag) { PORTB = copy[0]; flag = 0; } }`,
      "if (news()) flag = 1; tell(last);",
    ),
    true,
  ],
  [
    "clears a flag that was cleared",
    forever("static uint8_t seen;", "seen = 0; if (PINB & 4) seen = 1; if (seen && !(PORTB & 1)) PORTB = 2;"),
    true,
  ],
  [
    "sets a flag and clears it again",
    forever(
      "static uint8_t busy;",
      "busy = 1; uint8_t now = PINB; busy = 0; if (now == 7 || busy) PORTB = now;",
    ),
    true,
  ],
  [
    "keeps what it saw in a local of the function",
    forever("", "uint8_t now = PINB; if (now != last) PORTB = last = now;", "uint8_t last = 0;"),
    true,
  ],
  ["goes on to the next turn early", forever("", "if (!(PINB & 1)) continue; PORTB = PINB;"), true],
  [
    "counts turns in a local",
    forever("", "if (++turns == 500) { PORTB = 1; turns = 0; }", "uint16_t turns = 0;"),
    false,
  ],
  [
    "gives up after many turns",
    forever(
      "static uint8_t wait(uint8_t bit) { for (uint16_t i = 0; i < 2500; i++) if (PINB & bit) return 1; return 0; }",
      "PORTB = wait(1); PORTB = wait(2) + 4;",
    ),
    true,
  ],
  [
    "loses its patience",
    forever(
      "static uint8_t wait(uint8_t bit) { uint16_t left = 3000; while (!(PINB & bit)) { if (--left == 0) return 0; } return 1; }",
      "PORTB = wait(1); PORTB = wait(2) + 4;",
    ),
    true,
  ],
  [
    "counts down behind the look",
    forever(
      "static uint8_t wait(uint8_t bit) { uint8_t left = 200; while (!(PINB & bit)) { if (!left--) return 0; } return 1; }",
      "PORTB = wait(1); PORTB = wait(2) + 4;",
    ),
    true,
  ],
  [
    "counts down in its condition",
    forever(
      "",
      "uint16_t left = 1200; while (left-- && !(PINB & 1)) {} PORTB = PINB; while (PINB & 1) ; PORTB = 9;",
    ),
    true,
  ],
  [
    "counts down in a do loop",
    forever(
      "",
      "int16_t left = 700; do { if (PINB & 1) break; } while (--left > -300); PORTB = PINB; while (PINB & 1) ; PORTB = 9;",
    ),
    true,
  ],
  [
    "counts until its type is full",
    forever("", "uint8_t n = 0; while (++n != 0 && !(PINB & 1)) {} PORTB = n; while (PINB & 1) ; PORTB = 9;"),
    false,
  ],
  [
    "counts through the end of its type",
    forever(
      "",
      "uint8_t n = 5; while (n++ < 250 || n > 2) { if (PINB & 1) break; if (n == 100) PORTB = PINB; } PORTB = 9;",
    ),
    false,
  ],
  [
    "counts now and then",
    forever("", "if (PINB & 1) { if (++n > 3000) { PORTB = 1; n = 0; } } else PORTB = 2;", "uint16_t n = 0;"),
    false,
  ],
  [
    "compares its count as another type",
    forever(
      "",
      "int8_t n = 0; while (!(PINB & 1)) { n++; if ((uint8_t)n == 200) PORTB = 3; } while (PINB & 1) ; PORTB = 9;",
    ),
    false,
  ],
  [
    "uses its count",
    forever(
      "",
      "for (uint16_t i = 0; i < 1000; i++) { if ((i & 0x7f) == 3) PORTB = i; if (PINB & 1) break; } PORTB = 9;",
    ),
    false,
  ],
  [
    "counts two things",
    forever(
      "",
      "uint16_t a = 0, b = 900; while (!(PINB & 1)) { if (++a > 800) break; if (--b == 0) break; } PORTB = a; while (PINB & 1) ; PORTB = b;",
    ),
    false,
  ],
  [
    "counts turns in a static variable",
    forever("", "static uint16_t turns; if (++turns == 500) { PORTB = 1; turns = 0; }"),
    false,
  ],
  [
    "counts turns in an array",
    forever("static uint8_t n[2];", "if (++n[1] == 0 && ++n[0] % 8 == 1) PORTB = PINB;"),
    false,
  ],
  [
    "counts turns in a struct that is copied",
    forever("struct s { uint8_t a, b; } s, t;", "t.a++; s = t; if (s.a == 200) PORTB = PINB;"),
    false,
  ],
  [
    "counts turns through a pointer",
    forever("", "(*p)++; if (turns % 512 == 77) PORTB = PINB;", "uint16_t turns = 0; uint16_t *p = &turns;"),
    false,
  ],
  ["looks at a counter", forever("", "uint8_t now = TCNT0; if (now == 200) PORTB = now;"), false],
  ["asks for random numbers", forever("", "if ((rand() & 0xff) == 9) PORTB = 1;"), false],
  [
    "takes memory and gives it back",
    forever("", "void *p = malloc(4); if (PINB == 3 && p) PORTB = 1; free(p);"),
    false,
  ],
  [
    "has other things happen for a while",
    forever("", "for (uint8_t i = 0; i < 9; i++) if (PINB == i) PORTB = i;"),
    true,
  ],
  [
    "holds a static that is made once",
    forever(
      "static uint8_t first(void) { return PINB; }",
      "static uint8_t made; if (!made) { made = 1; PORTB = first(); } if (PINB & 8) PORTB = made;",
    ),
    true,
  ],
];

describe("a loop that", () => {
  test.each(loops)("%s does what it does with every turn run", (_what, text, skips) => {
    const turning = run(text, true);
    const skipping = run(text, false);
    expect(turning.writes.length).toBeGreaterThan(2);
    expect(skipping.writes).toEqual(turning.writes);
    expect(skipping.cycles).toBe(turning.cycles);
    if (skips) expect(skipping.reads).toBeLessThan(turning.reads);
  });

  it("waits looks a few times for each thing that happens, however long it waits", () => {
    const text = forever("", "if (PINB == last) continue; PORTB = last = PINB;", "uint8_t last = 0;");
    expect(run(text, false).reads).toBeLessThan(8 * 40);
    expect(run(text, true).reads).toBeGreaterThan(40 * 100);
  });
});
