import { beforeAll, describe, expect, test } from "vitest";
import { Bench } from "../../../src-core/bench/bench.ts";
import { createChip } from "../../../src-core/bench/chip/chip.ts";
import type { Wiring } from "../../../src-core/bench/chip/wiring.ts";
import { ImageEngine } from "../../../src-core/bench/engines/image-engine.ts";
import { mouseNamed } from "../../../src-core/bench/mice/profiles.ts";
import { pcNamed } from "../../../src-core/bench/pcs/pc-profiles.ts";
import type { Stroke } from "../../../src-core/bench/strokes/stroke.ts";
import { sampleStrokes } from "../../../src-core/bench/strokes/strokes.ts";
import { judgeRun } from "../../../src-core/bench/verdicts/judge-run.ts";
import type { ReportValues } from "../../../src-core/model/layouts/values.ts";
import { layoutNamed } from "../../../src-core/model/report-layouts.ts";
import { compileSample, compileSketch } from "./compile-image.ts";

/** As the notes and edgewise.json of both samples have it. */
const wiring: Wiring = {
  clock: "PD2",
  data: "PD3",
  hasExternalPullUps: false,
  transmit: "PD1",
  rts: "PD4",
  dtr: undefined,
  shifter: "inverting",
};
const hz = 16_000_000;
const sketchFolder = new URL("../../../sample-workspace/ferry-sketch", import.meta.url).pathname;

interface Sample {
  readonly name: string;
  readonly layout: string;
  readonly compile: () => Promise<Uint16Array>;
  readonly strokes: readonly string[];
}

const samples: readonly Sample[] = [
  {
    name: "ferry-c",
    layout: "two-button",
    compile: () => compileSample("ferry-c", "atmega328p", hz),
    strokes: sampleStrokes.map(({ name }) => name),
  },
  {
    name: "ferry-sketch",
    layout: "wheel",
    compile: () => compileSketch(sketchFolder, hz),
    strokes: ["nudge", "circle", "flick", "drag", "wheel"],
  },
];

function found<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("no such name");
  return value;
}

function strokeNamed(name: string): Stroke {
  return found(sampleStrokes.find((stroke) => stroke.name === name));
}

function run(program: Uint16Array, layout: string, stroke: Stroke, mouse = "wheel", pc = "rts-toggle") {
  const made = createChip({ name: "atmega328p", hz, program });
  if (made.kind !== "chip") throw new Error(made.message);
  const bench = new Bench({
    mouse: found(mouseNamed(mouse)),
    pc: found(pcNamed(pc)),
    stroke,
    layout: found(layoutNamed(layout)),
    baud: 1200,
    scale: 1,
    seed: 1,
  });
  const result = bench.run(new ImageEngine(made.chip, wiring));
  return { ...result, chip: made.chip };
}

describe.each(samples)("$name, compiled and from reset", ({ layout, compile, strokes }) => {
  let program: Uint16Array = new Uint16Array(0);
  beforeAll(async () => {
    program = await compile();
  });

  // Counts of the mouse's own reports, PS/2 with y upwards, beside those that the PC took, both layouts with y downwards.
  test.each(strokes)("%s arrives", (name) => {
    const stroke = strokeNamed(name);
    const { run: record, end, strokeBegan = 0, chip } = run(program, layout, stroke);
    expect(end).toEqual({ kind: "ended" });
    expect(strokeBegan).toBeGreaterThan(0);
    expect(record.pc.answers[0]?.outcome).toBe("identified");
    expect(record.conflicts).toEqual([]);
    // The sketch core's start-up switches the converter on; nothing reads it.
    expect(chip.core.notSimulated.filter(({ what }) => !what.endsWith("(adc)"))).toEqual([]);
    expect(record.pc.discarded).toEqual([]);
    const sent = record.mouse.reports.filter(({ sampled }) => sampled >= strokeBegan);
    const axes = layout === "wheel" ? (["x", "y", "wheel"] as const) : (["x", "y"] as const);
    for (const axis of axes) {
      const sum = (reports: readonly { readonly values: ReportValues }[]) =>
        reports.reduce((total, { values }) => total + (values[axis] ?? 0), 0);
      expect({ [axis]: sum(record.pc.reports) }).toEqual({
        [axis]: axis === "y" ? 0 - sum(sent) : sum(sent),
      });
    }
    expect(judgeRun(record).failures.map(({ rule }) => rule)).toEqual([]);
  });

  test("the same run twice is the same to the last edge", () => {
    const stroke = strokeNamed("circle");
    const [one, other] = [run(program, layout, stroke), run(program, layout, stroke)];
    expect(one.run.edges).toEqual(other.run.edges);
    expect(one.chip.cpu.cycles).toBe(other.chip.cpu.cycles);
  });
});
