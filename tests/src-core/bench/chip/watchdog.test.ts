import { describe, expect, test } from "vitest";
import { type ChipOnBench, onBench, wiredChips } from "./chip-on-bench.ts";

const control = (name: string) => (name.startsWith("attiny") ? "WDTCR" : "WDTCSR");

/** The timed sequence: WDCE and WDE together, then the new value within four cycles. "Watchdog Timer" of the datasheets. */
function change(bench: ChipOnBench, register: string, ...bits: string[]): void {
  bench.write(register, bench.bits("WDCE", "WDE"));
  bench.pass(2);
  bench.write(register, bench.bits(...bits));
}

describe.each(wiredChips)("watchdog of %s", (name) => {
  const register = control(name);

  // Typical time-outs of 16 ms to 8 s, 2,048 to 1,048,576 cycles of 128 kHz: table "Watchdog Timer Prescale Select".
  test.each([
    { bits: [], milliseconds: 16 },
    { bits: ["WDP1", "WDP0"], milliseconds: 128 },
    { bits: ["WDP2", "WDP1"], milliseconds: 1024 },
    { bits: ["WDP3", "WDP0"], milliseconds: 8192 },
  ])("resets after $milliseconds ms", ({ bits, milliseconds }) => {
    const bench = onBench(name);
    let resets = 0;
    bench.chip.onWatchdogReset = () => {
      resets += 1;
    };
    const letter = name.startsWith("attiny") ? "B" : "D";
    bench.write(`DDR${letter}`, 0x02);
    // The first write of the sequence sets WDE, so the counter starts with it.
    const start = bench.cycles;
    change(bench, register, "WDE", ...bits);
    const cycles = milliseconds * 16_000;
    expect(bench.runUntil(() => resets > 0, 2 * cycles)).toBe(start + cycles);
    expect(bench.read("MCUSR") & bench.bits("WDRF")).not.toBe(0);
    expect(bench.read(`DDR${letter}`)).toBe(0);
    // It runs on with the shortest time-out until WDRF and then WDE are cleared.
    expect(bench.read(register) & bench.bits("WDE")).not.toBe(0);
    expect(bench.runUntil(() => resets > 1, 1_000_000)).toBe(start + cycles + 16 * 16_000);
    change(bench, register);
    expect(bench.read(register) & bench.bits("WDE")).not.toBe(0);
    bench.write("MCUSR", 0);
    change(bench, register);
    expect(bench.read(register) & bench.bits("WDE")).toBe(0);
    expect(bench.runUntil(() => resets > 2, 100_000_000)).toBeUndefined();
  });

  test("WDR begins the time-out again; RAM outlives a reset", () => {
    const bench = onBench(name);
    let resets = 0;
    bench.chip.onWatchdogReset = () => {
      resets += 1;
    };
    const { ramStart } = bench.chip.model.memory;
    bench.chip.cpu.writeData(ramStart, 0x5a);
    change(bench, register, "WDE");
    for (let turn = 0; turn < 10; turn += 1) {
      bench.pass(15 * 16_000);
      bench.chip.cpu.onWatchdogReset();
    }
    expect(resets).toBe(0);
    bench.pass(16 * 16_000);
    expect(resets).toBe(1);
    expect(bench.chip.cpu.readData(ramStart)).toBe(0x5a);
  });

  test("the prescaler and WDE stay without the timed sequence, or when it is late", () => {
    const bench = onBench(name);
    change(bench, register, "WDE", "WDP2");
    bench.write(register, 0);
    expect(bench.read(register) & bench.bits("WDE", "WDP2")).toBe(bench.bits("WDE", "WDP2"));
    bench.write(register, bench.bits("WDCE", "WDE"));
    bench.pass(5);
    bench.write(register, 0);
    expect(bench.read(register) & bench.bits("WDE", "WDP2")).toBe(bench.bits("WDE", "WDP2"));
  });

  test("interrupt mode interrupts each time; with WDE the second time-out resets", () => {
    const bench = onBench(name);
    let resets = 0;
    bench.chip.onWatchdogReset = () => {
      resets += 1;
    };
    bench.write(register, bench.bits("WDIE"));
    for (let turn = 1; turn <= 3; turn += 1) {
      expect(bench.runUntil(() => bench.pending !== undefined, 1_000_000)).toBe(turn * 16 * 16_000);
      expect(bench.pending).toBe("WDT_vect");
      bench.chip.takeInterrupt();
    }
    bench.write(register, bench.bits("WDIE", "WDE"));
    expect(bench.runUntil(() => bench.pending !== undefined, 1_000_000)).toBeDefined();
    bench.chip.takeInterrupt();
    expect(bench.read(register) & bench.bits("WDIE")).toBe(0);
    bench.pass(16 * 16_000);
    expect(resets).toBe(1);
  });
});
