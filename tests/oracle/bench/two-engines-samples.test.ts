import { describe, expect, test } from "vitest";
import { Bench } from "../../../src-core/bench/bench.ts";
import { createChip } from "../../../src-core/bench/chip/chip.ts";
import type { Wiring } from "../../../src-core/bench/chip/wiring.ts";
import { mice, mouseNamed } from "../../../src-core/bench/mice/profiles.ts";
import { pcNamed, pcProfiles } from "../../../src-core/bench/pcs/pc-profiles.ts";
import type { Run } from "../../../src-core/bench/run-record.ts";
import { sampleStrokes } from "../../../src-core/bench/strokes/strokes.ts";
import { layoutNamed } from "../../../src-core/model/report-layouts.ts";
import { compileSample } from "./compile-image.ts";
import { engineFor, type Firmware } from "./image-on-bench.ts";
import { readFirmware } from "./read-firmware.ts";

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

function found<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("no such name");
  return value;
}

function runOf(firmware: Firmware, mouse: string, pc: string): Run {
  const made = createChip(firmware instanceof Uint16Array ? { name, hz, program: firmware } : { name, hz });
  if (made.kind !== "chip") throw new Error(made.message);
  const bench = new Bench({
    mouse: found(mouseNamed(mouse)),
    pc: found(pcNamed(pc)),
    stroke: found(sampleStrokes.find((stroke) => stroke.name === "circle")),
    layout: found(layoutNamed("two-button")),
    baud: 1200,
    scale: 1,
    seed: 1,
  });
  const { run, end } = bench.run(engineFor(firmware, made.chip, wiring, bench));
  expect(end).toEqual({ kind: "ended" });
  return run;
}

function sums({ pc }: Run): { readonly x: number; readonly y: number } {
  return pc.reports.reduce(({ x, y }, { values }) => ({ x: x + (values.x ?? 0), y: y + (values.y ?? 0) }), {
    x: 0,
    y: 0,
  });
}

const serialEdges = ({ edges }: Run) => edges.filter(({ wire }) => wire === "rxd");

const image = await compileSample("ferry-c", name, hz);
const folder = new URL("../../../sample-workspace/ferry-c", import.meta.url).pathname;
const sources = await readFirmware(folder, name, hz);

const pairs = [
  ...mice.map((mouse) => ({ mouse: mouse.name, pc: "rts-toggle" })),
  ...pcProfiles.map((pc) => ({ mouse: "wheel", pc: pc.name })),
];

/** The main loop looks at the line once in a turn, and the two need not be at the same place of it. In microseconds. */
const turn = 100;

// The compiled image is the reference: avr-gcc's code on the instructions of avr8js.
describe("the C sample, compiled and interpreted", () => {
  let alike = 0;

  test.each(pairs)("$mouse at $pc: as many bytes, the same movement", ({ mouse, pc }) => {
    const [compiled, interpreted] = [runOf(image, mouse, pc), runOf(sources, mouse, pc)];
    expect(serialEdges(compiled).length).toBeGreaterThan(4);
    expect(sums(interpreted)).toEqual(sums(compiled));
    expect(interpreted.pc.bytes.length).toBe(compiled.pc.bytes.length);
    const [a, b] = [serialEdges(compiled), serialEdges(interpreted)];
    if (a.length !== b.length) return;
    if (a.every(({ time }, index) => Math.abs(time - (b[index]?.time ?? 0)) < turn * 1e6)) alike += 1;
  });

  test("nearly all runs are alike to each edge of the serial line", () => {
    // A report of the mouse that comes as one leaves is counted in it by one engine and in the next by the other.
    expect(alike).toBeGreaterThanOrEqual(pairs.length - 4);
  });
});
