import { describe, expect, test } from "vitest";
import type { Wiring } from "../../../src-core/bench/chip/wiring.ts";
import { compileImage } from "./compile-image.ts";
import { bytesOf, type ImageRun, runOnBench } from "./image-on-bench.ts";
import { readFirmware } from "./read-firmware.ts";

const folder = new URL("programs/", import.meta.url).pathname;
const name = "atmega328p";
const hz = 16_000_000;
const wiring: Wiring = {
  clock: "PD2",
  data: "PD3",
  hasExternalPullUps: false,
  transmit: "PD1",
  rts: "PD4",
  dtr: undefined,
  shifter: "inverting",
};
const pc = { party: "pc", at: undefined } as const;

/** The same source compiled, which is the reference, and interpreted. */
async function both(
  program: string,
  cycles: number,
  defines: Readonly<Record<string, string | number>> = {},
  prepare?: Parameters<typeof runOnBench>[0]["prepare"],
): Promise<readonly [image: ImageRun, sources: ImageRun]> {
  const image = await compileImage(program, name, hz, defines);
  const sources = await readFirmware(folder, name, hz, [program], defines);
  const shared = { name, hz, wiring, cycles, ...(prepare && { prepare }) };
  return [runOnBench({ ...shared, program: image }), runOnBench({ ...shared, program: sources })];
}

describe("the same source, compiled and interpreted", () => {
  test("answers RTS with the same bytes in bits of the same length", async () => {
    const [image, sources] = await both("hello-on-rts.c", 400_000, {}, (queue, { rts }, at) => {
      queue.at(at(20_000), () => rts.drive(0, pc));
      queue.at(at(60_000), () => rts.drive(1, pc));
      queue.at(at(200_000), () => rts.drive(0, pc));
    });
    for (const { edges, end } of [image, sources]) {
      expect(end).toEqual({ kind: "ended" });
      expect(bytesOf(edges("rxd"), 13_328, 7)).toEqual([0x4d, 0x4d]);
    }
    image.edges("rxd").forEach(({ cycle, level }, index) => {
      const other = sources.edges("rxd")[index];
      expect(other?.level).toBe(level);
      // Two handlers of some fifty cycles each: the cost model is a few cycles off.
      expect(Math.abs((other?.cycle ?? 0) - cycle)).toBeLessThan(20);
    });
  });

  test("sleeps, and turns a pin over as often as timer 0 says", async () => {
    const [image, sources] = await both("timer-blink.c", 200_000, { SLEEPS: 1 });
    const steps = ({ edges }: ImageRun) =>
      edges("rxd")
        .slice(2)
        .map(({ cycle }, index) => cycle - (edges("rxd")[index + 1]?.cycle ?? 0));
    expect(steps(image).length).toBeGreaterThan(20);
    // The first is from the second edge on, when the handler ran for the first time.
    expect(new Set(steps(image).slice(1))).toEqual(new Set([8000]));
    expect(sources.end).toEqual({ kind: "ended" });
    expect(steps(sources)).toHaveLength(steps(image).length);
    expect(new Set(steps(sources).slice(1))).toEqual(new Set([8000]));
  });

  test("WDR keeps the watchdog quiet; without it the chip is reset 64 ms later", async () => {
    const [image, sources] = await both("watchdog.c", hz / 2);
    const reset = image.edges("rxd")[0]?.cycle ?? 0;
    expect(reset / (hz * 0.114)).toBeCloseTo(1, 3);
    // Sources are not started again: the run says that the chip was reset, and when.
    expect(sources.end).toMatchObject({ kind: "stopped", message: "the watchdog reset the chip" });
    expect(sources.cycles / reset).toBeCloseTo(1, 2);
  });

  test.each([
    { ending: 0, message: "main" },
    { ending: 1, message: "interrupts off" },
    { ending: 2, message: "other than idle" },
  ])("ending $ending: $message", async ({ ending, message }) => {
    for (const { end } of await both("endings.c", 1_000_000, { ENDING: ending })) {
      expect(end).toMatchObject({ kind: "stopped", message: expect.stringContaining(message) });
    }
  });
});
