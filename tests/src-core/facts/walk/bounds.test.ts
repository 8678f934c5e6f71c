import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { inOrder } from "../../../../src-core/facts/walk/in-order.ts";
import { factsOf } from "../../checks/harness.ts";
import { linesOf, walkC, walkOf } from "./walk-text.ts";

describe("bounds", () => {
  it("comes to an end where loops stand in loops and calls in calls", () => {
    const nested =
      "for (int a = 0; a < 100; a++) for (int b = 0; b < 100; b++) for (int c = 0; c < 100; c++) PORTB ^= 1;";
    const doubling = Array.from(
      { length: 22 },
      (_, n) => `static void f${n + 1}(void) { f${n}(); f${n}(); }`,
    ).join("\n");
    const walk = walkC(
      `static void f0(void) { PORTB ^= 2; }\n${doubling}\nint main(void) { ${nested} f22(); }\n`,
    );
    expect(walk.cutShort).toBe(true);
    const events = walk.entries.reduce((sum, entry) => sum + inOrder(entry.events).length, 0);
    expect(events).toBeLessThan(1_000_000);
  });

  it("comes to an end in mutual recursion and in expressions nested without reason", () => {
    const deep = `${"(".repeat(300)}1${")".repeat(300)}`;
    const walk = walkC(`void odd(int n);
void even(int n) { odd(n + 1); odd(n + 2); }
void odd(int n) { even(n + ${deep}); }
int main(void) { even(0); }
`);
    expect(walk.entries[0]?.entry.function.name).toBe("main");
  });

  it("walks a few turns of a long wait, and comes to what stands behind it", () => {
    const walk = walkC(`static uint8_t fell(void) {
  uint16_t left = 20000;
  while (left--) {
    if (!(PIND & _BV(PD2))) return 1;
    _delay_us(1);
  }
  return 0;
}
static uint8_t send(uint8_t value) {
  for (uint8_t i = 0; i < 11; i++) {
    if (!fell()) return 0;
    if (value & 1) DDRD &= ~_BV(PD3); else DDRD |= _BV(PD3);
    value >>= 1;
  }
  return 1;
}
int main(void) {
  ${"if (!send(0xFF)) return 1;\n  ".repeat(8)}PORTB = 7;
  for (;;) {}
}
`);
    expect(walk.cutShort).toBe(false);
    expect(linesOf(walk)).toContain("PORTB = 7");
  });

  it("walks an empty project, and one that only declares", () => {
    expect(walkOf({ "empty.c": "" }).entries).toEqual([]);
    expect(walkOf({ "main.c": "int main(void);\nextern int x;\n" }).entries).toEqual([]);
  });
});

/** Text files below a folder by their paths in it. */
function filesBelow(folder: string, prefix = ""): Record<string, string> {
  const files: Record<string, string> = {};
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) Object.assign(files, filesBelow(path, `${prefix}${name}/`));
    else files[`${prefix}${name}`] = readFileSync(path, "utf8");
  }
  return files;
}

const samples = new URL("../../../../sample-workspace/", import.meta.url).pathname;

describe("broken code", () => {
  for (const project of readdirSync(samples).filter((name) => statSync(join(samples, name)).isDirectory())) {
    it(`never throws on ${project} cut off anywhere`, () => {
      const files = filesBelow(join(samples, project));
      for (const [name, text] of Object.entries(files)) {
        if (!/\.(c|h|cpp|ino)$/.test(name)) continue;
        for (let end = 41; end < text.length; end += 1499) {
          const facts = factsOf({ ...files, [name]: text.slice(0, end) });
          expect(facts.ps2.notKnown.length).toBeLessThan(20);
        }
      }
    });
  }
});
