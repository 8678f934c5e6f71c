import { describe, expect, test } from "vitest";
import { mice } from "../../../../src-core/bench/mice/profiles.ts";
import { pcProfiles } from "../../../../src-core/bench/pcs/pc-profiles.ts";
import { type Stroke, step } from "../../../../src-core/bench/strokes/stroke.ts";
import { sampleStrokes } from "../../../../src-core/bench/strokes/strokes.ts";
import { judgeRun } from "../../../../src-core/bench/verdicts/judge-run.ts";
import { type BenchOptions, benchRun } from "./bench.ts";
import type { AdapterFaults } from "./paper-adapter.ts";

const MS = 1e9;

/** Clicks that are shorter than one serial report of 22.5 ms, in a movement that keeps the line busy. */
const clicksOnTheWay: Stroke = {
  name: "clicks-on-the-way",
  title: "Short clicks while the mouse moves.",
  steps: [
    step({ over: 100 * MS, right: 100 }),
    ...[1, 2, 3, 4].flatMap(() => [
      step({ press: ["left"], over: 11 * MS, right: 10 }),
      step({ release: ["left"], over: 50 * MS, right: 50 }),
    ]),
  ],
};

const told = (options: BenchOptions) =>
  judgeRun(benchRun(options)).failures.map(
    ({ rule, message, time }) => `${rule} at ${time / 1e9} ms: ${message}`,
  );

describe("an adapter that does what the documents ask passes", () => {
  test.each(mice.map(({ name }) => name))("with the mouse %s", (mouse) => {
    expect(told({ mouse, strokes: ["slow-diagonals", "circle", "drag"], restMs: 6000 })).toEqual([]);
  });

  test.each(pcProfiles.map(({ name }) => name))("at the PC %s", (pc) => {
    expect(told({ pc, strokes: ["slow-diagonals", "circle", "drag", "double-click"] })).toEqual([]);
  });

  test("with short clicks while the line is busy", () => {
    expect(told({ strokes: [clicksOnTheWay] })).toEqual([]);
  });

  test.each(sampleStrokes.map(({ name }) => name))("with the stroke %s", (stroke) => {
    expect(told({ strokes: [stroke] })).toEqual([]);
  });
});

interface Planted {
  readonly title: string;
  readonly faults: AdapterFaults;
  readonly rules: readonly string[];
  readonly options?: BenchOptions;
}

const planted: readonly Planted[] = [
  { title: "bits of 870 us", faults: { bitUs: 870 }, rules: ["serial/bit-time"] },
  { title: "bits of 800 us", faults: { bitUs: 800 }, rules: ["serial/bit-time"] },
  { title: "identification after 230 ms", faults: { identificationMs: 230 }, rules: ["serial/ident-late"] },
  {
    title: "identification after 230 ms at a patient PC",
    faults: { identificationMs: 230 },
    rules: ["serial/ident-late"],
    options: { pc: "patient" },
  },
  { title: "another identification", faults: { identification: [0x4e] }, rules: ["serial/ident-wrong"] },
  { title: "no identification", faults: { identification: [] }, rules: ["serial/ident-missing"] },
  {
    title: "an identification once only",
    faults: { answersOnce: true },
    rules: ["serial/control-line-ignored"],
    options: { pc: "second-reset" },
  },
  {
    title: "parity is not looked at",
    faults: { ignoresParity: true },
    rules: ["ps2/parity-unchecked"],
    options: { mouse: "disturbed-data" },
  },
  {
    title: "no way back from a broken report",
    faults: { neverResynchronises: true },
    rules: ["ps2/packet-resync"],
    options: { mouse: "restarts-itself", restMs: 1500 },
  },
  { title: "one movement in seven is forgotten", faults: { forgetsEvery: 7 }, rules: ["report/counts-lost"] },
  {
    title: "short clicks are lost",
    faults: { losesShortClicks: true },
    rules: ["report/counts-lost"],
    options: { strokes: [clicksOnTheWay] },
  },
  { title: "y is not turned over", faults: { turnsYOver: true }, rules: ["report/y-direction"] },
  {
    title: "large movements are not clipped",
    faults: { doesNotClip: true },
    rules: ["report/counts-lost"],
    options: { strokes: ["flick"] },
  },
  {
    title: "movements wait in a queue",
    faults: { queuesAll: true },
    rules: ["serial/throughput"],
    options: { strokes: ["slow-diagonals"], restMs: 6000 },
  },
  { title: "reports without news", faults: { floods: true }, rules: ["serial/throughput"] },
  {
    title: "reporting is never enabled",
    faults: { neverEnables: true },
    rules: ["ps2/reporting-not-enabled"],
  },
  {
    title: "a restart of the mouse is not noticed",
    faults: { ignoresRestart: true },
    rules: ["ps2/reporting-not-enabled"],
    options: { mouse: "restarts-itself", restMs: 6000 },
  },
  { title: "the clock is held for 80 us", faults: { holdUs: 80 }, rules: ["ps2/request-hold-short"] },
  {
    title: "wrong parity to the mouse, whose refusal is ignored",
    faults: { wrongParity: true, ignoresRefusal: true },
    rules: ["ps2/parity-wrong", "ps2/ack-ignored", "ps2/reporting-not-enabled"],
  },
  {
    title: "the firmware stops in the middle",
    faults: { stopsAtMs: 4000 },
    rules: ["ps2/wait-forever"],
    options: { strokes: Array.from({ length: 10 }, () => "circle") },
  },
  { title: "the firmware never starts", faults: { stopsAtMs: 0 }, rules: ["ps2/wait-forever"] },
];

describe("an adapter with one fault is told of it, and of nothing else", () => {
  test.each(planted)("$title", ({ faults, rules, options = {} }) => {
    const { failures } = judgeRun(benchRun({ ...options, faults }));
    expect(
      [...new Set(failures.map(({ rule }) => rule))].toSorted(),
      JSON.stringify(failures, undefined, 1),
    ).toEqual(rules.toSorted());
  });
});

test.each([
  ["counts that are lost", { forgetsEvery: 7 }, {}],
  ["reports that come late", { queuesAll: true }, { strokes: ["slow-diagonals"], restMs: 6000 }],
  ["reports without news", { floods: true }, {}],
  ["a wrong identification", { identification: [0x4e] }, {}],
  ["a wrong bit time", { bitUs: 870 }, {}],
] as const)("%s are told at the code that sent them", (_, faults, options) => {
  const { failures } = judgeRun(benchRun({ ...options, faults }));
  expect(failures.map(({ span }) => span)).toEqual([{ file: "ferry.c", start: 100, end: 104 }]);
});

test("the same run is judged the same, to the last figure", () => {
  const options = { mouse: "jittering-clock", strokes: ["circle"] };
  expect(judgeRun(benchRun(options))).toEqual(judgeRun(benchRun(options)));
});
