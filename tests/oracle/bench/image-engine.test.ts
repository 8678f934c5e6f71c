import { describe, expect, test } from "vitest";
import type { Wiring } from "../../../src-core/bench/chip/wiring.ts";
import type { Level } from "../../../src-core/bench/wires/edge.ts";
import { compileImage } from "./compile-image.ts";
import { bytesOf, type ImageRun, runOnBench } from "./image-on-bench.ts";

const common = { hasExternalPullUps: false, shifter: "inverting", dtr: undefined } as const;
const usual: Wiring = { ...common, clock: "PD2", data: "PD3", transmit: "PD1", rts: "PD4" };
const tiny: Wiring = { ...common, clock: "PB2", data: "PB0", transmit: "PB4", rts: "PB3" };

/**
 * Cycles from an edge to the first instruction of its handler: four to enter it, one more where the program counter has
 * 22 bits, as many again out of sleep ("Interrupt Response Time" of the datasheets, from memory), and the jump in the
 * table, JMP three and RJMP two (AVR Instruction Set Manual).
 */
const chips = [
  { name: "atmega328p", hz: 16_000_000, wiring: usual, entry: 4, jump: 3 },
  { name: "atmega168", hz: 16_000_000, wiring: usual, entry: 4, jump: 3 },
  {
    name: "atmega32u4",
    hz: 16_000_000,
    wiring: { ...common, clock: "PD0", data: "PD1", transmit: "PD3", rts: "PB4" },
    entry: 4,
    jump: 3,
  },
  {
    name: "atmega2560",
    hz: 16_000_000,
    wiring: { ...common, clock: "PE4", data: "PE5", transmit: "PE1", rts: "PJ0" },
    entry: 5,
    jump: 3,
  },
  { name: "attiny25", hz: 8_000_000, wiring: tiny, entry: 4, jump: 2 },
  { name: "attiny45", hz: 8_000_000, wiring: tiny, entry: 4, jump: 2 },
  { name: "attiny85", hz: 8_000_000, wiring: tiny, entry: 4, jump: 2 },
] as const;

type Chip = (typeof chips)[number];

async function run(
  chip: Chip,
  program: string,
  cycles: number,
  defines: Readonly<Record<string, string | number>> = {},
  prepare?: Parameters<typeof runOnBench>[0]["prepare"],
): Promise<ImageRun> {
  const image = await compileImage(program, chip.name, chip.hz, defines);
  const { name, hz, wiring } = chip;
  const result = runOnBench({ name, hz, wiring, program: image, cycles, ...(prepare && { prepare }) });
  expect(result.notSimulated).toEqual([]);
  return result;
}

function steps(edges: readonly { readonly cycle: number }[]): readonly number[] {
  return edges.slice(1).map(({ cycle }, index) => cycle - (edges[index]?.cycle ?? 0));
}

const pc = { party: "pc", at: undefined } as const;
const mouse = { party: "mouse", at: undefined } as const;

describe.each(chips)("$name", (chip) => {
  test("a square wave by SBI and CBI: 100 cycles high, 1,000 low", async () => {
    // AVR Instruction Set Manual: SBI 2, CBI 2, RJMP 2. 98 + 2 and 996 + 2 + 2.
    const { edges, end } = await run(chip, "square-wave.c", 20_000);
    expect(end).toEqual({ kind: "ended" });
    const own = edges("rxd").slice(2);
    expect(own.length).toBeGreaterThan(30);
    const lengths = (level: number) => new Set(steps(own).filter((_, index) => own[index]?.level === level));
    expect(lengths(1)).toEqual(new Set([100]));
    expect(lengths(0)).toEqual(new Set([1000]));
  });

  test("a pin turned over by timer 0: 64 (1 + OCR0A) cycles each, exact where the code sleeps", async () => {
    // f = f_clk / (N (1 + OCR)): "Clear Timer on Compare Match (CTC) Mode".
    const asleep = await run(chip, "timer-blink.c", 200_000, { SLEEPS: 1 });
    const asleepSteps = steps(asleep.edges("rxd").slice(2));
    expect(asleepSteps.length).toBeGreaterThan(20);
    expect(new Set(asleepSteps)).toEqual(new Set([8000]));
    const awake = await run(chip, "timer-blink.c", 200_000);
    const awakeSteps = steps(awake.edges("rxd").slice(2));
    expect(awakeSteps.length).toBeGreaterThan(20);
    // RJMP takes two cycles, so a handler may be one late.
    for (const step of awakeSteps) expect(Math.abs(step - 8000)).toBeLessThanOrEqual(1);
  });

  test("a soft serial port at 1200 baud: every edge at a whole number of bits", async () => {
    const bit = Math.round(chip.hz / 1200);
    const { edges, end } = await run(chip, "bit-banged.c", bit * 20, { BIT: bit });
    const own = edges("rxd").filter(({ cycle }) => cycle > bit);
    const start = own[0]?.cycle ?? 0;
    // The line 0, 1011001, 1 changes after bits 1, 2, 3, 5 and 7.
    expect(own.map(({ cycle }) => (cycle - start) / bit)).toEqual([0, 1, 2, 3, 5, 7]);
    expect(bytesOf(own, bit, 7)).toEqual(["M".charCodeAt(0)]);
    expect(end).toMatchObject({ kind: "stopped" });
  });

  test.each([{ SLEEPS: 0 }, { SLEEPS: 1 }])(
    "a change of RTS enters its handler (sleeps: $SLEEPS)",
    async ({ SLEEPS }) => {
      const { edges } = await run(
        chip,
        "first-instruction.c",
        10_000,
        SLEEPS === 1 ? { SLEEPS } : {},
        (queue, { rts }, at) => {
          queue.at(at(5000), () => rts.drive(0, pc));
        },
      );
      const delay = (edges("rxd")[0]?.cycle ?? 0) - 5000;
      if (SLEEPS === 1) expect(delay).toBe(2 * chip.entry + chip.jump);
      else {
        // NOP or RJMP may be under way.
        expect(delay).toBeGreaterThanOrEqual(chip.entry + chip.jump);
        expect(delay).toBeLessThanOrEqual(chip.entry + chip.jump + 1);
      }
    },
  );

  test("a PS/2 frame by interrupts on the clock, and its byte on the line", async () => {
    const bit = chip.name.startsWith("attiny") ? 832 : 16 * 52;
    const { edges } = await run(chip, "clock-interrupt.c", 80_000, {}, frame(0x5a, chip.hz));
    expect(
      bytesOf(
        edges("rxd").filter(({ cycle }) => cycle > 1000),
        bit,
        8,
      ),
    ).toEqual([0x5a]);
  });

  test("the watchdog resets 64 ms after the last WDR; then the cause can be read", async () => {
    const { edges } = await run(chip, "watchdog.c", chip.hz / 2);
    const [low] = edges("rxd");
    // Five turns of 10 ms with WDR, then 8,192 cycles of 128 kHz: table "Watchdog Timer Prescale Select".
    const expected = chip.hz * (0.05 + 0.064);
    expect(low?.level).toBe(0);
    expect((low?.cycle ?? 0) / expected).toBeCloseTo(1, 3);
  });

  test.each([
    { ending: 0, message: "main returned" },
    { ending: 1, message: "interrupts off" },
    { ending: 2, message: "other than idle" },
    { ending: 3, message: "holds no program" },
  ])("ending $ending: $message", async ({ ending, message }) => {
    const { end, cycles } = await run(chip, "endings.c", 1_000_000, { ENDING: ending });
    expect(end).toMatchObject({ kind: "stopped", message: expect.stringContaining(message) });
    expect(cycles).toBeLessThan(10_000);
  });

  test("an endless loop ends with the bench", async () => {
    const { end, cycles } = await run(chip, "endings.c", 100_000, { ENDING: 4 });
    expect(end).toEqual({ kind: "ended" });
    expect(cycles - 100_000).toBeLessThan(10);
  });
});

/** A device's frame at 12.5 kHz: the data line changes while the clock is high, the host reads as it falls. */
function frame(byte: number, hz: number): NonNullable<Parameters<typeof runOnBench>[0]["prepare"]> {
  const bits = Array.from({ length: 8 }, (_, bit) => (byte >> bit) & 1);
  // Odd parity: data and parity hold an odd number of ones.
  const parity = 1 - (bits.reduce((sum, bit) => sum + bit, 0) % 2);
  const half = hz / 25_000;
  return (queue, { clock, data }, at) => {
    for (const wire of [clock, data]) wire.pullUp("mouse", true, mouse);
    [0, ...bits, parity, 1].forEach((bit, index) => {
      const start = 10_000 + index * 2 * half;
      const move = (wire: typeof clock, level: Level | number, cycle: number) =>
        queue.at(at(cycle), () => wire.drive("mouse", level === 0 ? "low" : "released", mouse));
      move(data, bit, start);
      move(clock, 0, start + half / 2);
      move(clock, 1, start + half / 2 + half);
    });
  };
}

describe.each(chips.filter(({ name }) => name.startsWith("atmega")))("USART of $name", (chip) => {
  test("sends M when RTS goes ON, at the divisor's bit time", async () => {
    const { edges } = await run(chip, "hello-on-rts.c", 400_000, {}, (queue, { rts }, at) => {
      queue.at(at(20_000), () => rts.drive(0, pc));
      queue.at(at(60_000), () => rts.drive(1, pc));
      queue.at(at(200_000), () => rts.drive(0, pc));
    });
    // UBRR 832 for 1200 baud at 16 MHz: 16 (832 + 1) cycles a bit, 0.04 % long (baud rate formula of the datasheets).
    const bit = 13_328;
    const own = edges("rxd");
    expect(bytesOf(own, bit, 7)).toEqual(["M".charCodeAt(0), "M".charCodeAt(0)]);
    const first = own.filter(({ cycle }) => cycle < 200_000);
    const start = first[0]?.cycle ?? 0;
    expect(first.map(({ cycle }) => (cycle - start) / bit)).toEqual([0, 1, 2, 3, 5, 7]);
    // The handler needs some dozen instructions to come to its store.
    expect(start - 20_000).toBeGreaterThan(10);
    expect(start - 20_000).toBeLessThan(60);
  });
});

describe.each(chips.filter(({ name }) => name.startsWith("attiny")))("USI of $name", (chip) => {
  test("takes the data bits of a PS/2 frame", async () => {
    const { edges } = await run(chip, "usi-receive.c", 80_000, {}, frame(0xc5, chip.hz));
    expect(
      bytesOf(
        edges("rxd").filter(({ cycle }) => cycle > 1000),
        832,
        8,
      ),
    ).toEqual([0xc5]);
  });
});
