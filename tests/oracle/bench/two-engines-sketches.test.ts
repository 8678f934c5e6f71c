import { describe, expect, test } from "vitest";
import { Bench } from "../../../src-core/bench/bench.ts";
import { createChip } from "../../../src-core/bench/chip/chip.ts";
import type { Wiring } from "../../../src-core/bench/chip/wiring.ts";
import { mouseNamed } from "../../../src-core/bench/mice/profiles.ts";
import { pcNamed } from "../../../src-core/bench/pcs/pc-profiles.ts";
import type { Run } from "../../../src-core/bench/run-record.ts";
import { sampleStrokes } from "../../../src-core/bench/strokes/strokes.ts";
import { layoutNamed } from "../../../src-core/model/report-layouts.ts";
import { compileSketch } from "./compile-image.ts";
import { bytesOf, engineFor, type Firmware, type ImageRun, runOnBench } from "./image-on-bench.ts";
import { readSketch } from "./read-firmware.ts";

const name = "atmega328p";
const hz = 16_000_000;
const wiring: Wiring = {
  clock: "PD2",
  data: "PD3",
  hasExternalPullUps: true,
  transmit: "PD1",
  rts: "PD4",
  dtr: undefined,
  shifter: "inverting",
};
const mouse = { party: "mouse", at: undefined } as const;
/** 16 MHz / 8 / 208, UBRR0 207 with U2X0. */
const bit = 1664;

const here = (path: string) => new URL(path, import.meta.url).pathname;

// The compiled sketch with the core's own sources is the reference: avr-gcc's code on the instructions of avr8js.
async function both(
  sketch: string,
  cycles: number,
  prepare?: Parameters<typeof runOnBench>[0]["prepare"],
): Promise<readonly [image: ImageRun, sources: ImageRun]> {
  const folder = here(`sketches/${sketch}`);
  const shared = { name, hz, wiring, cycles, ...(prepare && { prepare }) };
  const image = runOnBench({ ...shared, program: await compileSketch(folder, hz) });
  const sources = runOnBench({ ...shared, program: await readSketch(folder, hz) });
  for (const { end } of [image, sources]) expect(end).toEqual({ kind: "ended" });
  return [image, sources];
}

const bytes = ({ edges }: ImageRun) => bytesOf(edges("rxd"), bit, 8);

/** From each edge to the next, without what was before the firmware began. */
function lengths({ edges }: ImageRun, wire: "clock" | "data"): readonly number[] {
  const own = edges(wire).filter(({ cycle }) => cycle > 100);
  return own.slice(1).map(({ cycle }, index) => cycle - (own[index]?.cycle ?? 0));
}

describe("the same sketch, compiled with the sketch core and interpreted", () => {
  test("pins-and-time: pulses of the same length, the same time", async () => {
    const [image, sources] = await both("pins-and-time", 3_000_000);
    expect(bytes(image)).toHaveLength(8);
    expect(bytes(sources)).toEqual(bytes(image));
    const [real, estimated] = [lengths(image, "clock"), lengths(sources, "clock")];
    expect(real.length).toBeGreaterThan(20);
    expect(estimated).toHaveLength(real.length);
    real.forEach((length, index) => {
      // Two calls of a tenth of error each, or one overflow handler of 100 cycles more or less.
      expect(Math.abs((estimated[index] ?? 0) - length)).toBeLessThan(40 + (length > 10_000 ? 100 : 0));
    });
  });

  test("full-buffer: the same bytes, one behind the other, and the same wait for room", async () => {
    const [image, sources] = await both("full-buffer", 2_400_000);
    // Of five bytes two go to shift and data register, three wait among 63.
    const text = bytes(image).slice(90);
    expect(String.fromCharCode(...text)).toBe("room 60\r\n");
    expect(bytes(sources)).toEqual(bytes(image));
    // From the first start bit on: the start-up of the C library, which clears the variables, is not counted in sources.
    const since = ({ edges }: ImageRun) => {
      const start = edges("rxd").find(({ level }) => level === 0)?.cycle ?? 0;
      return edges("clock")
        .filter(({ cycle }) => cycle > start)
        .map(({ cycle, level }) => ({ cycle: cycle - start, level }));
    };
    const [real, estimated] = [since(image).slice(-2), since(sources).slice(-2)];
    expect(real.map(({ level }) => level)).toEqual([1, 0]);
    expect(estimated.map(({ level }) => level)).toEqual([1, 0]);
    real.forEach(({ cycle }, index) => {
      expect(Math.abs((estimated[index]?.cycle ?? 0) - cycle)).toBeLessThan(100);
    });
  });

  test("printing: the same text, in the same time within an eighth", async () => {
    const [image, sources] = await both("printing", 3_000_000);
    expect(String.fromCharCode(...bytes(image))).toBe("a line of text1234567-42FF\r\n\x01\x02\x03\x04");
    expect(bytes(sources)).toEqual(bytes(image));
    // High while it prints.
    const widths = ({ edges }: ImageRun) => {
      const own = edges("clock");
      return own.flatMap(({ cycle, level }, index) => {
        const rise = own[index - 1];
        return level === 0 && rise?.level === 1 ? [cycle - rise.cycle] : [];
      });
    };
    const [real, estimated] = [widths(image).slice(-5), widths(sources).slice(-5)];
    expect(estimated).toHaveLength(real.length);
    real.forEach((width, index) => {
      // An overflow handler of 100 cycles or one of the USART may come in one of the two.
      expect(Math.abs((estimated[index] ?? 0) - width)).toBeLessThan(width / 8 + 130);
    });
  });

  test("attached: the function runs as soon after an edge, the main loop sees as many", async () => {
    const falls = Array.from({ length: 20 }, (_, index) => 100_000 + 37_123 * index);
    const [image, sources] = await both("attached", 1_000_000, (queue, { clock }, at) => {
      for (const fall of falls) {
        queue.at(at(fall), () => clock.drive("mouse", "low", mouse));
        queue.at(at(fall + 640), () => clock.drive("mouse", "released", mouse));
      }
    });
    expect(bytes(image)).toHaveLength(falls.length);
    expect(bytes(sources)).toHaveLength(falls.length);
    const delays = ({ edges }: ImageRun) =>
      edges("data")
        .filter(({ cycle }) => cycle > 50_000)
        .map(({ cycle }, index) => cycle - (falls[index] ?? 0));
    const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[10] ?? 0;
    expect(delays(image)).toHaveLength(falls.length);
    expect(delays(sources)).toHaveLength(falls.length);
    expect(Math.abs(median(delays(sources)) - median(delays(image)))).toBeLessThan(10);
    bytes(image).forEach((byte, index) => {
      expect(Math.abs((bytes(sources)[index] ?? 0) - byte)).toBeLessThanOrEqual(1);
    });
  });
});

describe("a loop that waits for a pin", () => {
  test("busy-wait: sees an edge as late, earliest, latest and on average", async () => {
    const falls = Array.from({ length: 60 }, (_, index) => 100_000 + 7_001 * index);
    const [image, sources] = await both("busy-wait", 600_000, (queue, { clock }, at) => {
      for (const fall of falls) {
        queue.at(at(fall), () => clock.drive("mouse", "low", mouse));
        queue.at(at(fall + 3000), () => clock.drive("mouse", "released", mouse));
      }
    });
    const delays = ({ edges }: ImageRun) => {
      const answers = edges("data").filter(({ cycle }) => cycle > 50_000);
      return falls.map((fall) => (answers.find(({ cycle }) => cycle > fall)?.cycle ?? 0) - fall);
    };
    // An overflow handler of the core that comes in between is left out.
    const usual = (run: ImageRun) =>
      delays(run)
        .toSorted((a, b) => a - b)
        .slice(0, -4);
    const [real, estimated] = [usual(image), usual(sources)];
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(Math.abs((estimated[0] ?? 0) - (real[0] ?? 0))).toBeLessThan(15);
    expect(Math.abs((estimated.at(-1) ?? 0) - (real.at(-1) ?? 0))).toBeLessThan(20);
    expect(Math.abs(mean(estimated) - mean(real))).toBeLessThan(12);
  });
});

function found<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("no such name");
  return value;
}

function runOf(firmware: Firmware, mouseName: string, stroke: string): Run {
  const made = createChip(firmware instanceof Uint16Array ? { name, hz, program: firmware } : { name, hz });
  if (made.kind !== "chip") throw new Error(made.message);
  const bench = new Bench({
    mouse: found(mouseNamed(mouseName)),
    pc: found(pcNamed("rts-toggle")),
    stroke: found(sampleStrokes.find((each) => each.name === stroke)),
    layout: found(layoutNamed("wheel")),
    baud: 1200,
    scale: 1,
    seed: 1,
  });
  const sampleWiring = { ...wiring, hasExternalPullUps: false };
  const { run, end } = bench.run(engineFor(firmware, made.chip, sampleWiring, bench));
  expect(end).toEqual({ kind: "ended" });
  return run;
}

describe("the sample sketch, compiled with the sketch core and interpreted", async () => {
  const folder = here("../../../sample-workspace/ferry-sketch");
  const [image, sources] = await Promise.all([compileSketch(folder, hz), readSketch(folder, hz)]);

  test.each([
    ["plain", "circle"],
    ["wheel", "wheel"],
    ["five-button", "click"],
    ["clock-at-16-7-khz", "all-at-once"],
    ["clock-at-10-khz", "drag"],
    ["asks-for-resend", "nudge"],
  ])("%s, %s: the same movement, nearly as many bytes", (mouseName, stroke) => {
    const [compiled, interpreted] = [runOf(image, mouseName, stroke), runOf(sources, mouseName, stroke)];
    expect(compiled.pc.reports.length).toBeGreaterThan(0);
    for (const axis of ["x", "y", "wheel"] as const) {
      const sum = ({ pc }: Run) => pc.reports.reduce((total, { values }) => total + (values[axis] ?? 0), 0);
      expect({ [axis]: sum(interpreted) }).toEqual({ [axis]: sum(compiled) });
    }
    // A report of the mouse that comes as one leaves is counted in it by one engine and in the next by the other.
    expect(Math.abs(interpreted.pc.bytes.length - compiled.pc.bytes.length)).toBeLessThanOrEqual(4);
  });
});
