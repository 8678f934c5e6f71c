import { expect, test } from "vitest";
import { type CellJob, notRun } from "../../../server/cells/cell-job.ts";
import { runCells } from "../../../server/cells/run-cells.ts";
import type { EventsOf } from "../../../server/workers/worker.ts";
import type { CellResult } from "../../../src-core/matrix-result.ts";

const job = (mouse: string): CellJob => ({
  project: "/quay",
  cell: { mouse, pc: "p", strokes: ["s"], seed: 1 },
});
const resultOf = ({ cell: { mouse, pc } }: CellJob): CellResult => ({ mouse, pc, outcomes: [] });

/** Workers that answer when the test says so. */
function bench(mice: string, workers: number) {
  const started: { events: EventsOf<CellResult>; jobs: CellJob[]; isEnded: boolean }[] = [];
  const done: string[] = [];
  const interruption = new AbortController();
  const results = runCells({
    jobs: [...mice].map(job),
    start: (events) => {
      const worker = { events, jobs: [] as CellJob[], isEnded: false };
      started.push(worker);
      return {
        post: (each) => worker.jobs.push(each),
        end: () => {
          worker.isEnded = true;
        },
      };
    },
    workers,
    done: ({ mouse }) => done.push(mouse),
    interrupted: interruption.signal,
  });
  const answer = (at: number): void => {
    const last = started[at]?.jobs.at(-1);
    if (last !== undefined) started[at]?.events.answered(resultOf(last));
  };
  return { started, done, interruption, results, answer };
}

test("results come in the order of the cells, whichever is done first, and no worker is left", async () => {
  const { started, done, results, answer } = bench("abcd", 2);
  for (const worker of [1, 1, 0, 1]) answer(worker);
  expect((await results)?.map(({ mouse }) => mouse)).toEqual(["a", "b", "c", "d"]);
  expect(done).toEqual(["b", "c", "a", "d"]);
  expect(started.map(({ jobs }) => jobs.map(({ cell }) => cell.mouse))).toEqual([["a"], ["b", "c", "d"]]);
  expect(started.every(({ isEnded }) => isEnded)).toBe(true);
});

test("there are no more workers than cells, and none for no cell", async () => {
  const one = bench("a", 8);
  expect(one.started).toHaveLength(1);
  one.answer(0);
  expect(await one.results).toHaveLength(1);
  const none = bench("", 8);
  expect(await none.results).toEqual([]);
  expect(none.started).toEqual([]);
});

test("a worker that ends by itself leaves its cell not run, and another goes on", async () => {
  const { started, results, answer } = bench("abc", 1);
  answer(0);
  started[0]?.events.ended("it needed more than 32 MB of memory");
  expect(started).toHaveLength(2);
  answer(1);
  const message = "the cell could not be run: it needed more than 32 MB of memory";
  expect(await results).toEqual([resultOf(job("a")), notRun(job("b"), message), resultOf(job("c"))]);
});

test("an interruption ends the workers at once", async () => {
  const { started, done, interruption, results, answer } = bench("abcd", 2);
  answer(0);
  interruption.abort();
  expect(await results).toBeUndefined();
  expect(done).toEqual(["a"]);
  expect(started.every(({ isEnded }) => isEnded)).toBe(true);
});
