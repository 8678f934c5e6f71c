import { expect, test } from "vitest";
import { FirmwareTrials } from "../../../../server/language-server/trials/firmware-trials.ts";
import { FakeWorkers, resultSaying } from "./fake-worker.ts";

const textsOf = (text: string) => new Map([["/p/a.c", text]]);

function startedTrials() {
  const workers = new FakeWorkers();
  const ready: string[] = [];
  const log: string[] = [];
  const trials = new FirmwareTrials(workers.start, {
    ready: (project) => ready.push(project),
    log: (message) => log.push(message),
  });
  return { trials, workers, ready, log };
}

test("a result is told of when it arrives, and kept for the texts that it is of", () => {
  const { trials, workers, ready } = startedTrials();
  expect(trials.resultOf("/p", textsOf("one"))).toBeUndefined();
  expect(ready).toEqual([]);
  workers.last.answer({ kind: "tried", result: resultSaying("of one"), isLast: true });
  expect(ready).toEqual(["/p"]);
  expect(trials.resultOf("/p", textsOf("one"))).toEqual(resultSaying("of one"));
  expect(workers.last.requests).toHaveLength(1);
  expect(trials.resultOf("/p", textsOf("two"))).toBeUndefined();
  expect(trials.resultOf("/p", new Map())).toBeUndefined();
});

test("an edit that is taken back needs no new run", () => {
  const { trials, workers } = startedTrials();
  trials.resultOf("/p", textsOf("one"));
  workers.last.answer({ kind: "tried", result: resultSaying("of one"), isLast: true });
  trials.edited("/p");
  expect(trials.resultOf("/p", textsOf("one"))).toEqual(resultSaying("of one"));
  expect(workers.last.requests).toHaveLength(1);
});

test("what is known first is told first, and replaced by what is known last", () => {
  const { trials, workers, ready } = startedTrials();
  trials.resultOf("/p", textsOf("one"));
  workers.last.answer({ kind: "tried", result: resultSaying("parts"), isLast: false });
  expect(ready).toEqual(["/p"]);
  expect(trials.resultOf("/p", textsOf("one"))).toEqual(resultSaying("parts"));
  workers.last.answer({ kind: "tried", result: resultSaying("all"), isLast: true });
  expect(ready).toEqual(["/p", "/p"]);
  expect(trials.resultOf("/p", textsOf("one"))).toEqual(resultSaying("all"));
  expect(workers.last.requests).toHaveLength(1);
});

test("what is known in part after an edit that was taken back is told, and the rest is found out", () => {
  const { trials, workers } = startedTrials();
  trials.resultOf("/p", textsOf("one"));
  workers.last.answer({ kind: "tried", result: resultSaying("parts"), isLast: false });
  trials.edited("/p");
  expect(workers.last.isCancelled).toBe(true);
  workers.last.answer({ kind: "cancelled" });
  expect(trials.resultOf("/p", textsOf("one"))).toEqual(resultSaying("parts"));
  expect(workers.last.requests).toHaveLength(2);
});

test("what is known stays where the rest cannot be found out, and why is said", () => {
  const { trials, workers } = startedTrials();
  trials.resultOf("/p", textsOf("one"));
  workers.last.answer({ kind: "tried", result: resultSaying("parts"), isLast: false });
  workers.last.die("it ended");
  expect(trials.resultOf("/p", textsOf("one"))).toEqual({
    ...resultSaying("parts"),
    failure: { why: "it ended", partsRan: true },
  });
});

test("a project that is gone is forgotten", () => {
  const { trials, workers } = startedTrials();
  trials.resultOf("/p", textsOf("one"));
  workers.last.answer({ kind: "tried", result: resultSaying("of one"), isLast: true });
  trials.drop("/p");
  expect(trials.resultOf("/p", textsOf("one"))).toBeUndefined();
});

test("why a firmware could not be tried is all that its trial gives, once for its texts", () => {
  const { trials, workers, ready } = startedTrials();
  trials.resultOf("/p", textsOf("one"));
  workers.last.die("it needed more than 7 MB of memory");
  expect(ready).toEqual(["/p"]);
  expect(trials.resultOf("/p", textsOf("one"))).toEqual({
    findings: [],
    notUnderstood: [],
    proposals: [],
    whole: false,
    ran: false,
    reports: [],
    wholeRuns: undefined,
    chosenRun: undefined,
    failure: { why: "it needed more than 7 MB of memory", partsRan: false },
  });
  expect(workers.started).toHaveLength(1);
});

test("the log has a failure once, until a trial came to its end", () => {
  const { trials, workers, log } = startedTrials();
  const fail = (text: string) => {
    trials.resultOf("/p", textsOf(text));
    workers.last.answer({ kind: "failed", why: "no reason" });
  };
  fail("one");
  fail("two");
  expect(log).toEqual(["/p could not be tried: no reason"]);
  trials.resultOf("/p", textsOf("three"));
  workers.last.answer({ kind: "tried", result: resultSaying("of three"), isLast: true });
  fail("four");
  expect(log).toHaveLength(2);
});
