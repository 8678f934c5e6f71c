import { describe, expect, test } from "vitest";
import { type ChipOnBench, onBench, steps, type WiredChip } from "./chip-on-bench.ts";

const large = ["atmega328p", "atmega168", "atmega32u4", "atmega2560"] as const;
const small = ["attiny25", "attiny45", "attiny85"] as const;

interface Named {
  readonly chip: WiredChip;
  readonly flags: string;
  readonly masks: string;
}

const chips: readonly Named[] = [
  ...large.map((chip) => ({ chip, flags: "TIFR0", masks: "TIMSK0" })),
  ...small.map((chip) => ({ chip, flags: "TIFR", masks: "TIMSK" })),
];

/** CS02:0 of timers 0 and 1: table "Clock Select Bit Description" of the datasheets. */
const dividers = [
  { select: ["CS00"], divider: 1 },
  { select: ["CS01"], divider: 8 },
  { select: ["CS01", "CS00"], divider: 64 },
  { select: ["CS02"], divider: 256 },
  { select: ["CS02", "CS00"], divider: 1024 },
] as const;

describe.each(chips)("timer 0 of $chip", ({ chip, flags, masks }) => {
  test.each(dividers)("overflows after 256 counts, divided by $divider", ({ select, divider }) => {
    const bench = onBench(chip);
    bench.write("TCCR0B", bench.bits(...select));
    // The counter starts at 0 and overflows as it goes from 255 to 0.
    expect(bench.risesOf(flags, "TOV0", 3)).toEqual([256, 512, 768].map((count) => count * divider));
  });

  test.each(dividers)("compare-clear mode: (OCR + 1) counts, divided by $divider", ({ select, divider }) => {
    const bench = onBench(chip);
    bench.write("TCCR0A", bench.bits("WGM01"));
    bench.write("OCR0A", 99);
    bench.write("TCCR0B", bench.bits(...select));
    // f_OC = f / (2 N (1 + OCR)), two matches a period: "Clear Timer on Compare Match (CTC) Mode".
    expect(steps(bench.risesOf(flags, "OCF0A", 4))).toEqual([100, 100, 100].map((count) => count * divider));
    // The top is never passed, so nothing overflows.
    expect(bench.read(flags) & bench.bits("TOV0")).toBe(0);
  });

  test("fast PWM overflows at its top; phase-correct PWM at the bottom of two slopes", () => {
    // f = f / (N 256) and f / (N 510): "Fast PWM Mode", "Phase Correct PWM Mode".
    for (const { mode, period } of [
      { mode: ["WGM01", "WGM00"], period: 256 },
      { mode: ["WGM00"], period: 510 },
    ]) {
      const bench = onBench(chip);
      bench.write("TCCR0A", bench.bits(...mode));
      bench.write("TCCR0B", bench.bits("CS01"));
      expect(steps(bench.risesOf(flags, "TOV0", 4))).toEqual(
        [period, period, period].map((each) => each * 8),
      );
    }
  });

  test("interrupts: pending while flag and enable bit are 1, cleared as the handler is entered", () => {
    const bench = onBench(chip);
    bench.write("TCCR0B", bench.bits("CS00"));
    bench.pass(300);
    expect(bench.pending).toBeUndefined();
    bench.write(masks, bench.bits("TOIE0"));
    expect(bench.pending).toMatch(/^TIM(ER)?0_OVF_vect$/);
    bench.chip.takeInterrupt();
    expect(bench.pending).toBeUndefined();
    expect(bench.read(flags) & bench.bits("TOV0")).toBe(0);
    expect(bench.runUntil(() => bench.pending !== undefined, 1000)).toBe(512);
  });

  test("the count can be read at any time and written", () => {
    const bench = onBench(chip);
    bench.write("TCCR0B", bench.bits("CS01"));
    bench.pass(8 * 77 + 3);
    expect(bench.read("TCNT0")).toBe(77);
    bench.write("TCNT0", 250);
    bench.pass(5);
    expect(bench.read("TCNT0")).toBe(251);
    expect(bench.risesOf(flags, "TOV0", 1)).toEqual([8 * (78 + 5)]);
  });

  test("a compare value set below the count is met after the counter has gone round", () => {
    const bench = onBench(chip);
    bench.write("TCCR0A", bench.bits("WGM01"));
    bench.write("OCR0A", 200);
    bench.write("TCCR0B", bench.bits("CS00"));
    bench.pass(150);
    bench.write("OCR0A", 100);
    // "the counter will miss the compare match" and count to 0xFF and around: CTC mode. 256 - 150 + 101 counts more.
    expect(bench.risesOf(flags, "OCF0A", 2)).toEqual([256 + 101, 256 + 202]);
  });

  test("a written 1 clears its own flag and no other", () => {
    const bench = onBench(chip);
    bench.write("TCCR0B", bench.bits("CS00"));
    bench.pass(600);
    const all = bench.bits("TOV0", "OCF0A", "OCF0B");
    expect(bench.read(flags) & all).toBe(all);
    bench.write(flags, bench.bits("OCF0A"));
    expect(bench.read(flags) & all).toBe(bench.bits("TOV0", "OCF0B"));
  });
});

/** Cycles at which a pin turned over, by its PIN register. */
function turns(bench: ChipOnBench, pin: string, mask: number, count: number): readonly number[] {
  return Array.from({ length: count }, () => {
    const before = bench.read(pin) & mask;
    return bench.runUntil(() => (bench.read(pin) & mask) !== before, 10_000_000) ?? 0;
  });
}

// OC0A: "Alternate Functions" of the ports in the datasheets.
test.each([
  { chip: "atmega328p", port: "D", bit: 6 },
  { chip: "atmega32u4", port: "B", bit: 7 },
  { chip: "atmega2560", port: "B", bit: 7 },
  { chip: "attiny85", port: "B", bit: 0 },
] as const)("$chip: OC0A toggles at each match, half the rate of the matches", ({ chip, port, bit }) => {
  const bench = onBench(chip, { data: chip === "attiny85" ? "PB3" : "PB1" });
  bench.write(`DDR${port}`, 1 << bit);
  bench.write("TCCR0A", bench.bits("WGM01", "COM0A0"));
  bench.write("OCR0A", 49);
  bench.write("TCCR0B", bench.bits("CS01"));
  expect(steps(turns(bench, `PIN${port}`, 1 << bit, 4))).toEqual([400, 400, 400]);
});

test("fast PWM: OC2B is high for OCR + 1 of 256 counts", () => {
  // Non-inverting: cleared at the match, set at the bottom. "Fast PWM Mode", timer 2; CS22 alone divides by 64.
  const bench = onBench("atmega328p", { data: "PB0" });
  bench.write("DDRD", 1 << 3);
  bench.write("TCCR2A", bench.bits("WGM21", "WGM20", "COM2B1"));
  bench.write("OCR2B", 63);
  bench.write("TCCR2B", bench.bits("CS22"));
  const [, rise = 0, fall = 0, next = 0] = turns(bench, "PIND", 1 << 3, 4).slice(0, 4);
  expect([fall - rise, next - fall].map((cycles) => cycles / 64).sort((a, b) => a - b)).toEqual([64, 192]);
});

// CS22:0 of timer 2 has 32 and 128 as well: table "Clock Select Bit Description" of timer 2.
test.each([
  { select: ["CS20"], divider: 1 },
  { select: ["CS21"], divider: 8 },
  { select: ["CS21", "CS20"], divider: 32 },
  { select: ["CS22"], divider: 64 },
  { select: ["CS22", "CS20"], divider: 128 },
  { select: ["CS22", "CS21"], divider: 256 },
  { select: ["CS22", "CS21", "CS20"], divider: 1024 },
])("timer 2 of ATmega328P and ATmega2560 divides by $divider", ({ select, divider }) => {
  for (const chip of ["atmega328p", "atmega2560"] as const) {
    const bench = onBench(chip);
    bench.write("TCCR2B", bench.bits(...select));
    expect(steps(bench.risesOf("TIFR2", "TOV2", 3))).toEqual([256 * divider, 256 * divider]);
  }
});

function write16(bench: ChipOnBench, register: string, value: number): void {
  bench.write(`${register}H`, value >> 8);
  bench.write(`${register}L`, value & 0xff);
}

describe.each(large)("timer 1 of %s", (chip) => {
  test("overflows after 65,536 counts", () => {
    const bench = onBench(chip);
    bench.write("TCCR1B", bench.bits("CS10"));
    expect(bench.risesOf("TIFR1", "TOV1", 2)).toEqual([65_536, 131_072]);
  });

  test("compare-clear modes 4 and 12: OCR1A + 1 and ICR1 + 1 counts", () => {
    const a = onBench(chip);
    write16(a, "OCR1A", 13_332);
    a.write("TCCR1B", a.bits("WGM12", "CS10"));
    expect(steps(a.risesOf("TIFR1", "OCF1A", 3))).toEqual([13_333, 13_333]);
    const b = onBench(chip);
    write16(b, "ICR1", 4_999);
    b.write("TCCR1B", b.bits("WGM13", "WGM12", "CS11"));
    expect(steps(b.risesOf("TIFR1", "ICF1", 3))).toEqual([40_000, 40_000]);
  });

  test("phase and frequency correct PWM, mode 8: two times ICR1 counts", () => {
    const bench = onBench(chip);
    write16(bench, "ICR1", 1_000);
    bench.write("TCCR1B", bench.bits("WGM13", "CS10"));
    expect(steps(bench.risesOf("TIFR1", "TOV1", 3))).toEqual([2_000, 2_000]);
  });

  test("the high byte waits: both bytes of the count belong to the moment when the low one was read", () => {
    const bench = onBench(chip);
    bench.write("TCCR1B", bench.bits("CS10"));
    bench.pass(0x1ff);
    expect(bench.read("TCNT1L")).toBe(0xff);
    bench.pass(10);
    expect(bench.read("TCNT1H")).toBe(0x01);
    write16(bench, "TCNT1", 0x4000);
    expect(bench.read("TCNT1L") + bench.read("TCNT1H") * 256).toBe(0x4000);
  });

  test("channel B matches and interrupts on its own", () => {
    const bench = onBench(chip);
    write16(bench, "OCR1B", 100);
    bench.write("TIMSK1", bench.bits("OCIE1B"));
    bench.write("TCCR1B", bench.bits("CS10"));
    expect(bench.runUntil(() => bench.pending !== undefined, 1000)).toBe(101);
    expect(bench.pending).toBe("TIMER1_COMPB_vect");
  });
});

test("input capture: the count at the chosen edge of ICP1", () => {
  // PB0 of the ATmega328P; ICES1 0 is the falling edge. "Input Capture Unit".
  const bench = onBench("atmega328p", { clock: "PB0" });
  bench.wires.clock.pullUp("mouse", true, { party: "mouse", at: undefined });
  bench.write("TCCR1B", bench.bits("CS10"));
  bench.pass(1234);
  bench.wires.clock.drive("mouse", "low", { party: "mouse", at: undefined });
  bench.pass(10);
  expect(bench.read("TIFR1") & bench.bits("ICF1")).not.toBe(0);
  expect(bench.read("ICR1L") + bench.read("ICR1H") * 256).toBe(1234);
});

test("timer 0 counts falling edges of T0", () => {
  // CS02:0 of 6; T0 is PD4 of the ATmega328P.
  const bench = onBench("atmega328p", { clock: "PD4", rts: undefined });
  bench.wires.clock.pullUp("mouse", true, { party: "mouse", at: undefined });
  bench.write("TCCR0B", bench.bits("CS02", "CS01"));
  for (let edge = 0; edge < 11; edge += 1) {
    for (const drive of ["low", "released"] as const) {
      bench.wires.clock.drive("mouse", drive, { party: "mouse", at: undefined });
      bench.pass(100);
    }
  }
  expect(bench.read("TCNT0")).toBe(11);
});

describe.each(small)("timer 1 of %s", (chip) => {
  // CS13:0 from 1 on divides by 2^(CS - 1): table "Timer/Counter1 Prescale Select" of the datasheet 2586, from memory.
  test.each([1, 2, 5, 8, 15])("clock select %i", (select) => {
    const bench = onBench(chip);
    bench.write("TCCR1", select);
    const period = 256 * 2 ** (select - 1);
    expect(steps(bench.risesOf("TIFR", "TOV1", 3))).toEqual([period, period]);
  });

  test("CTC1: OCR1C + 1 counts", () => {
    const bench = onBench(chip);
    bench.write("OCR1C", 103);
    bench.write("OCR1A", 103);
    bench.write("TCCR1", bench.bits("CTC1") | 4);
    expect(steps(bench.risesOf("TIFR", "OCF1A", 3))).toEqual([832, 832]);
  });
});

test("the prescaler runs on by itself until GTCCR resets it", () => {
  // "the prescaler is free running": "Timer/Counter0 and Timer/Counter1 Prescalers".
  const bench = onBench("atmega328p");
  bench.pass(1000);
  bench.write("TCCR0B", bench.bits("CS02"));
  bench.pass(23);
  expect(bench.read("TCNT0")).toBe(0);
  bench.pass(1);
  expect(bench.read("TCNT0")).toBe(1);
  bench.write("GTCCR", bench.bits("PSRSYNC"));
  bench.pass(255);
  expect(bench.read("TCNT0")).toBe(1);
  bench.pass(1);
  expect(bench.read("TCNT0")).toBe(2);
});

test("a timer that runs with flags that nobody clears makes no more events", () => {
  const bench = onBench("atmega328p");
  bench.write("TCCR0B", bench.bits("CS00"));
  bench.pass(1000);
  expect(bench.chip.core.events.next).toBe(Number.POSITIVE_INFINITY);
});
