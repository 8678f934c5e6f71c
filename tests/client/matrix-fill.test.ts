import { expect, test } from "vitest";
import { MatrixFill, type MatrixRuns } from "../../client/matrix-fill.ts";
import type { EndOfMatrix, ToMatrix } from "../../client/views/matrix/messages.ts";
import type { CellVerdict } from "../../server/language-server/client-messages/matrix.ts";

const named = (name: string) => ({ name, title: `the ${name}` });

/** Runs of one mouse, which do as the test says. */
function runsOf(mouse: string) {
  let take: (cell: CellVerdict) => void = () => undefined;
  let end: (why: EndOfMatrix) => void = () => undefined;
  const did = { begun: 0, cancelled: 0 };
  let edited: readonly string[] | undefined;
  const runs: MatrixRuns = {
    plan: { mice: [named(mouse)], pcs: [named("patient")], strokes: [named("nudge")] },
    begin(taker) {
      take = taker;
      did.begun += 1;
      return {
        ended: new Promise((resolve) => {
          end = resolve;
        }),
        edited: async () => edited,
        cancel: () => {
          did.cancelled += 1;
        },
      };
    },
  };
  const cell: CellVerdict = {
    mouse,
    pc: "patient",
    verdict: "passed",
    word: "passed",
    detail: "nudge",
    stroke: undefined,
  };
  return {
    runs,
    did,
    take: () => take(cell),
    edit: (...files: readonly string[]) => {
      edited = files;
    },
    async end() {
      end({ kind: "done" });
      await Promise.resolve();
    },
    plan: { kind: "plan", name: "adapter", plan: runs.plan },
    cell: { kind: "cell", cell },
  };
}

const ended = { kind: "end", why: { kind: "done" } };

function fillWith(runs: MatrixRuns) {
  const posted: ToMatrix[] = [];
  return { fill: new MatrixFill("adapter", runs, (message) => posted.push(message)), posted };
}

test("nothing is run before the page is there", () => {
  const plain = runsOf("plain");
  const { fill, posted } = fillWith(plain.runs);
  expect([plain.did.begun, posted]).toEqual([0, []]);
  fill.ready();
  expect([plain.did.begun, posted]).toEqual([1, [plain.plan]]);
});

test("a page that was moved is told all that is known, and nothing is run again", async () => {
  const plain = runsOf("plain");
  const { fill, posted } = fillWith(plain.runs);
  fill.ready();
  plain.take();
  posted.length = 0;
  fill.ready();
  expect(posted).toEqual([plain.plan, plain.cell]);
  await plain.end();
  posted.length = 0;
  fill.ready();
  expect(posted).toEqual([plain.plan, plain.cell, ended]);
  expect(plain.did).toEqual({ begun: 1, cancelled: 0 });
});

test("of runs that gave way to others nothing is told any more", async () => {
  const [plain, wheel] = [runsOf("plain"), runsOf("wheel")];
  const { fill, posted } = fillWith(plain.runs);
  fill.ready();
  plain.take();
  posted.length = 0;
  fill.replace(wheel.runs);
  expect(plain.did.cancelled).toBe(1);
  plain.take();
  await plain.end();
  fill.ready();
  expect(posted).toEqual([wheel.plan, wheel.plan]);
});

test("a page that is closed ends its runs and is told nothing more", async () => {
  const plain = runsOf("plain");
  const { fill, posted } = fillWith(plain.runs);
  fill.ready();
  fill.close();
  plain.take();
  await plain.end();
  expect(plain.did.cancelled).toBe(1);
  expect(posted).toEqual([plain.plan]);
});

test("sources that were edited since are told, also to a page that was moved", async () => {
  const plain = runsOf("plain");
  const { fill, posted } = fillWith(plain.runs);
  fill.ready();
  await fill.followSources();
  expect(posted).toEqual([plain.plan]);
  plain.edit("ps2.c");
  await fill.followSources();
  plain.edit("ps2.c", "main.c");
  await fill.followSources();
  const both = { kind: "edited", files: ["ps2.c", "main.c"] };
  expect(posted).toEqual([plain.plan, { kind: "edited", files: ["ps2.c"] }, both]);
  posted.length = 0;
  fill.ready();
  expect(posted).toEqual([plain.plan, both]);
  const asked = fill.followSources();
  fill.replace(runsOf("wheel").runs);
  posted.length = 0;
  await asked;
  expect(posted).toEqual([]);
});
