import { describe, expect, test } from "vitest";
import type { FirmwareLens, ReportLens } from "../../../src-core/lens.ts";
import { lensTitle, runOfTitle } from "../../../src-core/present/lenses/lens-title.ts";
import { lineValuesAsMarkdown } from "../../../src-core/present/lenses/line-values-as-markdown.ts";
import type { MovementOutcome, RunVerdict } from "../../../src-core/trial-details.ts";

const span = { file: "a.c", start: 0, end: 1 };
const ran = { kind: "ran", came: "40 3F 00", right: "43 3F 00", stores: [] } as const;

function ofReport(outcome: MovementOutcome | undefined, isStale = false, failure?: string): string {
  const lens: ReportLens = {
    kind: "report",
    span,
    isStale,
    failure,
    subject: { file: "a.c", name: "encode" },
    builds: true,
    layout: "two-button",
    movement: outcome && { given: "left 1", outcome },
  };
  return lensTitle(lens);
}

describe("a movement through an encoder", () => {
  test.each([
    [{ ...ran, judgement: "right" }, "left 1: 40 3F 00, as two-button wants"],
    [{ ...ran, judgement: "wrong" }, "left 1: 40 3F 00, right is 43 3F 00"],
    [{ ...ran, judgement: "allowed" }, "left 1: 40 3F 00; a full two-button report is 43 3F 00"],
    [{ kind: "cannot", why: "it does not end" }, "left 1: it does not end"],
  ] as const)("%#", (outcome, title) => {
    expect(ofReport(outcome)).toBe(title);
    expect(ofReport(outcome, true)).toBe(`${title} (from before the edit)`);
  });

  test("before the first trial nothing is called stale", () => {
    expect(ofReport(undefined, true)).toBe("two-button: not tried yet");
  });

  test("a trial that failed is not blamed on the note", () => {
    expect(ofReport(undefined, false, "it ended")).toBe("two-button: not tried: it ended");
    expect(ofReport(undefined)).toBe("two-button: not tried, as its note is at fault");
  });
});

describe("runs of a whole firmware", () => {
  const named = (name: string) => ({ name, title: "" });
  const run = (said: Partial<RunVerdict> = {}): RunVerdict => ({
    mouse: named("plain"),
    pc: named("rts-toggle"),
    stroke: named("circle"),
    faults: [],
    accepted: 0,
    stopped: undefined,
    strokeBegan: true,
    ...said,
  });
  const lensOf = (runs: readonly RunVerdict[], notRun?: string): FirmwareLens => ({
    kind: "firmware",
    span,
    isStale: false,
    failure: undefined,
    runs: { runs, notRun },
    chosen: undefined,
  });
  const of = (runs: readonly RunVerdict[], notRun?: string): string => lensTitle(lensOf(runs, notRun));
  const cell = "plain mouse at rts-toggle, circle";

  test.each([
    [[run()], undefined, `${cell}: passed`],
    [[run(), run()], undefined, `${cell}: passed, as did 1 other run`],
    [
      [run(), run({ faults: ["no bytes", "late"] })],
      undefined,
      `${cell}: 2 faults, first: no bytes (1 of 2 runs failed)`,
    ],
    [[run({ faults: ["no bytes"] })], undefined, `${cell}: 1 fault: no bytes`],
    [[run({ faults: ["no bytes"], accepted: 3 })], undefined, `${cell}: 1 fault: no bytes`],
    [[run({ accepted: 1 })], undefined, `${cell}: passed but for 1 fault accepted`],
    [
      [run({ accepted: 2 }), run()],
      undefined,
      `${cell}: passed but for 2 faults accepted, as did 1 other run`,
    ],
    [[run({ stopped: "a wild pointer" })], undefined, `${cell}: not run to its end: a wild pointer`],
    [[run({ strokeBegan: false })], undefined, `${cell}: mouse and PC were never both ready`],
    [[run()], "2 runs were left out", `${cell}: passed; 2 runs were left out`],
    [[], "the clock is not known", "the clock is not known"],
  ])("%#", (runs, notRun, title) => {
    expect(of(runs, notRun)).toBe(title);
  });

  test("the run that the title tells of can be asked for", () => {
    const failed = run({ pc: named("patient"), faults: ["no bytes"] });
    const choice = { mouse: "plain", pc: "patient", stroke: "circle" };
    expect(runOfTitle(lensOf([run(), failed]))).toEqual(choice);
    expect(runOfTitle(lensOf([run()]))).toEqual({ ...choice, pc: "rts-toggle" });
    expect(runOfTitle(lensOf([], "the clock is not known"))).toBeUndefined();
    const chosen = { kind: "cannot", choice, message: "there is no such PC" } as const;
    expect(runOfTitle({ ...lensOf([run()]), chosen })).toEqual(choice);
  });
});

test("a page shows each line with what it stored, and what was stored elsewhere by its place", () => {
  const stores = [{ byte: 0, value: 0x40, span: undefined }];
  const page = lineValuesAsMarkdown({
    name: "encode",
    layout: "two-button",
    movement: { given: "left 1", outcome: { ...ran, judgement: "wrong", stores } },
    lines: [
      {
        number: 9,
        text: "\tout[0] = 0x40;\r",
        stored: [
          { byte: 0, value: 0x40 },
          { byte: 0, value: 0x43 },
        ],
      },
      { number: 10, text: "}", stored: [] },
    ],
    elsewhere: [{ byte: 1, value: 0x3f, place: "line 3 of put.c" }],
  });
  expect(page.split("\n")).toEqual(
    expect.arrayContaining([
      "# encode, line by line",
      "left 1: 40 3F 00, right is 43 3F 00",
      " 9      out[0] = 0x40;  => byte 1 40, byte 1 43",
      "10  }",
      "- line 3 of put.c: byte 2 3F",
    ]),
  );
});
