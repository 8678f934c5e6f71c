import { describe, expect, it } from "vitest";
import { argumentsOf, linesOf, walkC, walkOf, walkSketch } from "./walk-text.ts";

describe("calls", () => {
  it("follows calls into other files and hands arguments on", () => {
    const walk = walkOf({
      "wait.h": "void wait_ms(unsigned ms);\n",
      "wait.c":
        '#include "wait.h"\n#include <util/delay.h>\nvoid wait_ms(unsigned ms) { _delay_ms(2 * ms); }\n',
      "main.c": '#include "wait.h"\nint main(void) { wait_ms(21); return 0; }\n',
    });
    expect(linesOf(walk)).toEqual(["_delay_ms(42)"]);
  });

  it("gives what a function returns, through pointers as well", () => {
    const walk = walkC(`static int twice(int x) { return 2 * x; }
static void put(int *into, int value) { *into = value; }
int main(void) {
  int n;
  put(&n, twice(4));
  _delay_ms(n);
}
`);
    expect(argumentsOf(walk, "_delay_ms")).toEqual(["8"]);
  });

  it("ends where a function calls itself, and forgets what that may have changed", () => {
    const walk = walkC(`static int level = 1;
static void down(int n) {
  level = n;
  if (n > 0) down(n - 1);
}
int main(void) {
  down(3);
  _delay_ms(level);
}
`);
    expect(linesOf(walk)).toEqual(["not followed: recursion", "_delay_ms(?)"]);
  });

  it("goes through function pointers that are known, and says so where they are not", () => {
    const walk = walkC(`static void one(void) { _delay_ms(1); }
static void (*const table[])(void) = {one};
extern void (*hook)(void);
int main(void) {
  table[0]();
  hook();
}
`);
    expect(linesOf(walk)).toEqual(["_delay_ms(1)", "not followed: called through an unknown pointer"]);
  });
});

describe("branches", () => {
  it("walks only the side that is taken where the condition is known", () => {
    const walk = walkC("int main(void) { if (sizeof(int) == 2) _delay_ms(1); else _delay_ms(2); }\n");
    expect(linesOf(walk)).toEqual(["_delay_ms(1)"]);
  });

  it("walks both sides of an unknown condition and goes on with what they have in common", () => {
    const walk = walkC(`int main(void) {
  int same = 1, differs = 1;
  if (PINB & 1) { differs = 2; _delay_us(10); } else { same = 1; _delay_us(20); }
  _delay_ms(same);
  _delay_ms(differs);
}
`);
    expect(linesOf(walk)).toEqual([
      "either [_delay_us(10)] or [_delay_us(20)]",
      "_delay_ms(1)",
      "_delay_ms(?)",
    ]);
  });

  it("drops the side that has left the function", () => {
    const walk = walkC(`static int level(void) {
  int n = 3;
  if (PINB & 1) { n = 4; return 0; }
  return n;
}
static void stop(void) {
  int n = 5;
  if (PINB & 2) { n = 6; return; }
  _delay_ms(n);
}
int main(void) { stop(); _delay_ms(level() | 4); }
`);
    expect(argumentsOf(walk, "_delay_ms")).toEqual(["5", "?"]);
  });

  it("takes the cases of a switch apart, with those that fall through", () => {
    const walk = walkC(`static void act(uint8_t what) {
  switch (what) {
  case 1: _delay_ms(1);
  case 2: _delay_ms(2); break;
  default: _delay_ms(9);
  }
}
int main(void) { act(1); act(2); act(7); act(PINB); }
`);
    expect(linesOf(walk)).toEqual([
      "_delay_ms(1)",
      "_delay_ms(2)",
      "_delay_ms(2)",
      "_delay_ms(9)",
      "either [_delay_ms(1)] or [_delay_ms(2), break] or [_delay_ms(9)]",
    ]);
  });

  it("tells a known switch that is left from within by itself", () => {
    const walk = walkC(`static void act(uint8_t what) {
  switch (what) {
  case 1:
    if (PINB & 1) break;
    _delay_ms(1);
  }
  _delay_ms(2);
}
int main(void) { act(1); act(2); }
`);
    expect(linesOf(walk)).toEqual([
      "either [either [break] or [], _delay_ms(1)]",
      "_delay_ms(2)",
      "_delay_ms(2)",
    ]);
  });

  it("evaluates the right side of && and || only where it counts", () => {
    const walk = walkC(`static int tell(int ms) { _delay_ms(ms); return 1; }
int main(void) {
  (void)(0 && tell(1));
  (void)(1 || tell(2));
  (void)(tell(3) && tell(4));
  (void)((PINB & 1) && tell(5));
}
`);
    expect(linesOf(walk)).toEqual(["_delay_ms(3)", "_delay_ms(4)", "either [_delay_ms(5)] or []"]);
  });

  it("joins forward jumps at their label", () => {
    const walk = walkC(`int main(void) {
  if (PINB & 1) goto out;
  _delay_ms(1);
out:
  _delay_ms(2);
}
`);
    expect(linesOf(walk)).toEqual(["either [goto] or []", "_delay_ms(1)", "_delay_ms(2)"]);
  });
});

describe("loops", () => {
  it("walks bit loops turn by turn", () => {
    const walk = walkC(`static void send(uint8_t value) {
  for (uint8_t i = 0; i < 8; i++) { _delay_us((value & 1) ? 20 : 10); value >>= 1; }
}
int main(void) { send(0xA5); }
`);
    // 0xA5 is 10100101, least significant bit first.
    expect(argumentsOf(walk, "_delay_us")).toEqual(["20", "10", "20", "10", "10", "20", "10", "20"]);
  });

  it("counts long loops without walking every turn", () => {
    const walk = walkC(
      "int main(void) { for (unsigned i = 0; i < 5000; i++) { PORTB ^= 1; _delay_us(3); } _delay_ms(1); }\n",
    );
    const [loop, after] = linesOf(walk);
    expect(loop).toMatch(/^counted 5000: /);
    expect(after).toBe("_delay_ms(1)");
  });

  it("makes what a loop changes unknown where its turns are not", () => {
    const walk = walkC(`int main(void) {
  int turns = 0, kept = 7;
  while (PINB & 1) turns++;
  _delay_ms(kept);
  _delay_ms(turns);
}
`);
    expect(argumentsOf(walk, "_delay_ms")).toEqual(["7", "?"]);
  });

  it("tells waiting from working", () => {
    const walk = walkC(`int main(void) {
  while (!(PIND & _BV(2))) { }
  loop_until_bit_is_set(UCSR0A, UDRE0);
  while (PINB & 1) PORTB |= 2;
  for (;;) _delay_ms(1);
}
`);
    expect(linesOf(walk).map((line) => line.split(":")[0])).toEqual([
      "waiting",
      "waiting",
      "unknown",
      "endless",
    ]);
  });

  it("says what a loop waits for", () => {
    const walk = walkSketch(`void setup() {
  unsigned long since = millis();
  while (digitalRead(2) && millis() - since < 25) ;
}
void loop() {}
`);
    const setup = walk.entries[0]?.events[0];
    const loop = setup?.kind === "call" ? setup.events.find(({ kind }) => kind === "loop") : undefined;
    expect(loop?.kind === "loop" && loop.waitsFor.map(({ kind }) => kind).sort()).toEqual(["pin", "time"]);
  });

  it.each([
    ["while (flag() && --n) { }", 999],
    ["while (flag() && n--) { }", 1000],
    ["while (flag()) { if (--n == 0) break; }", 1000],
    ["while (flag()) { if (++m > 50) return 1; }", 51],
    ["for (uint8_t i = 0; i < 200 && flag(); i++) { }", 200],
  ])("knows that a counter ends %s after %i turns", (loop, turns) => {
    const walk = walkC(`int flag(void);
int main(void) {
  uint16_t n = 1000, m = 0;
  ${loop}
  return n + m;
}
`);
    const found = walk.entries[0]?.events.find(({ kind }) => kind === "loop");
    expect(found?.kind === "loop" && found.atMost).toBe(turns);
  });

  it("joins what break and continue leave behind", () => {
    const walk = walkC(`int main(void) {
  int n = 1;
  for (uint8_t i = 0; i < 3; i++) {
    if (i == 1) continue;
    if (i == 2) { n = 5; break; }
    n = 3;
  }
  _delay_ms(n);
}
`);
    expect(argumentsOf(walk, "_delay_ms")).toEqual(["5"]);
  });

  it("takes the body of ATOMIC_BLOCK and of do ... while (0) as done once", () => {
    const walk = walkC(`#include <util/atomic.h>
int main(void) {
  int n = 0;
  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { n += 2; }
  do { n += 3; } while (0);
  _delay_ms(n);
}
`);
    expect(argumentsOf(walk, "_delay_ms")).toEqual(["5"]);
  });
});
