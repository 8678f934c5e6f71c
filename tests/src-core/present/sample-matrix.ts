import type { Failure } from "../../../src-core/bench/verdicts/verdict.ts";
import type { Span } from "../../../src-core/finding.ts";
import type { MatrixResult, RunInBrief, StrokeOutcome } from "../../../src-core/matrix-result.ts";
import { FileLines } from "../../../src-core/present/line-index.ts";

/** The text that the result below speaks of. */
const texts: Readonly<Record<string, string>> = {
  "quay/ps2.c": "void request(void)\n{\n\thold(HOLD_US);\n}\n",
};

export const matrixLines = new FileLines((file) => texts[file]);

const named = (name: string) => ({ name, title: `Title of ${name}.` });
const hold: Span = { file: "quay/ps2.c", start: 27, end: 34 };

const shortHold: Failure = {
  rule: "ps2/request-hold-short",
  message: 'the clock is low for "60 us" & too short',
  measured: { value: 60, unit: "us" },
  limit: { atLeast: 100, unit: "us" },
  source: "A timing table",
  // 512.3456 ms in picoseconds.
  time: 512_345_600_000,
  span: hold,
  times: 3,
};

const lost: Failure = {
  rule: "report/counts-lost",
  message: "counts are lost",
  measured: undefined,
  limit: undefined,
  source: undefined,
  time: 1_000_000_000_000,
  span: undefined,
  times: 1,
};

function ran(
  stroke: string,
  failures: readonly Failure[],
  more: Partial<Pick<RunInBrief, "stopped" | "strokeBegan">> = {},
): StrokeOutcome {
  const run: RunInBrief = {
    stroke: named(stroke),
    mouse: named("m"),
    pc: named("p"),
    layout: "two-button",
    seed: 4,
    // 1.5 s in picoseconds.
    ended: 1_500_000_000_000,
    strokeBegan: true,
    verdict: {
      failures,
      figures: {
        counts: [{ axis: "x", in: 5, out: 5 }],
        clicks: { in: 2, out: 2 },
        delay: undefined,
        identifications: [],
        measured: [],
        bytes: { received: 9, framingErrors: 0, discarded: 0 },
        held: { total: 0, longest: 0 },
      },
    },
    stopped: undefined,
    notSimulated: [],
    ...more,
  };
  return { kind: "run", stroke, run };
}

/** Three mice at two PCs without the last cell, which is another shard's; one outcome of each kind. */
export const sampleMatrix: MatrixResult = {
  plan: {
    mice: [named("plain"), named("late"), named("wheel")],
    pcs: [named("old"), named("hurried")],
    strokes: [named("nudge"), named("click")],
  },
  seed: 4,
  shard: { part: 1, parts: 2 },
  cells: [
    { mouse: "plain", pc: "old", outcomes: [ran("nudge", []), ran("click", [])] },
    // The first fault of each run counts; the second of the first run is not told.
    {
      mouse: "plain",
      pc: "hurried",
      outcomes: [ran("nudge", [shortHold, lost]), ran("click", [shortHold])],
    },
    { mouse: "late", pc: "old", outcomes: [ran("nudge", []), ran("click", [lost])] },
    {
      mouse: "late",
      pc: "hurried",
      outcomes: [
        ran("nudge", [lost], { stopped: { message: "main returned", span: hold } }),
        ran("click", [shortHold]),
      ],
    },
    {
      mouse: "wheel",
      pc: "old",
      outcomes: [
        { kind: "cannot", stroke: "nudge", message: "the cell could not be run: no memory" },
        ran("click", [], { strokeBegan: false }),
      ],
    },
  ],
};
