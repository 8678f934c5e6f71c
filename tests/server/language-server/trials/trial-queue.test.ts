import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import {
  longestTrial,
  type TrialEnd,
  TrialQueue,
} from "../../../../server/language-server/trials/trial-queue.ts";
import { FakeWorkers, resultSaying } from "./fake-worker.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const textsOf = (text: string) => new Map([["/p/a.c", text]]);
const tried = (message: string): TrialEnd => ({ kind: "tried", result: resultSaying(message), isLast: true });

function startedQueue() {
  const workers = new FakeWorkers();
  const ended: [project: string, text: string | undefined, end: TrialEnd][] = [];
  const log: string[] = [];
  const queue = new TrialQueue(workers.start, {
    ended: ({ project, texts }, end) => ended.push([project, texts.get("/p/a.c"), end]),
    log: (message) => log.push(message),
  });
  return { queue, workers, ended, log };
}

describe("the order of trials", () => {
  test("no worker is started before there is something to try", () => {
    const { queue, workers } = startedQueue();
    queue.edited("/p");
    queue.drop("/p");
    expect(workers.started).toEqual([]);
  });

  test("one project at a time, by one worker", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("p"));
    queue.want("/q", textsOf("q"));
    expect(workers.last.requests.map(({ project }) => project)).toEqual(["/p"]);
    workers.last.answer(tried("of p"));
    expect(workers.last.requests.map(({ project }) => project)).toEqual(["/p", "/q"]);
    workers.last.answer(tried("of q"));
    expect(workers.started).toHaveLength(1);
    expect(ended).toEqual([
      ["/p", "p", tried("of p")],
      ["/q", "q", tried("of q")],
    ]);
  });

  test("the latest edited comes first", () => {
    const { queue, workers } = startedQueue();
    queue.edited("/q");
    queue.edited("/r");
    queue.edited("/p");
    for (const project of ["/p", "/q", "/r", "/s"]) queue.want(project, textsOf(""));
    for (let count = 0; count < 4; count++) workers.last.answer(tried(""));
    expect(workers.last.requests.map(({ project }) => project)).toEqual(["/p", "/r", "/q", "/s"]);
  });

  test("a run gives way to a project that was edited later, and is begun again after it", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("p"));
    queue.edited("/q");
    expect(workers.last.isCancelled).toBe(false);
    queue.want("/q", textsOf("q"));
    expect(workers.last.isCancelled).toBe(true);
    workers.last.answer({ kind: "cancelled" });
    expect(workers.last.request).toMatchObject({ project: "/q" });
    expect(workers.last.isCancelled).toBe(false);
    workers.last.answer(tried("of q"));
    workers.last.answer(tried("of p"));
    expect(ended.map(([project]) => project)).toEqual(["/q", "/p"]);
  });

  test("a run that was to give way and ended all the same is not begun again", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("p"));
    queue.edited("/q");
    queue.want("/q", textsOf("q"));
    workers.last.answer(tried("of p"));
    workers.last.answer(tried("of q"));
    expect(ended.map(([project]) => project)).toEqual(["/p", "/q"]);
    expect(workers.last.requests).toHaveLength(2);
  });
});

describe("older texts", () => {
  test("texts that are no newer leave the run alone", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("same"));
    queue.want("/p", textsOf("same"));
    expect(workers.last.isCancelled).toBe(false);
    workers.last.answer(tried("of the text"));
    expect(ended).toEqual([["/p", "same", tried("of the text")]]);
    expect(workers.last.requests).toHaveLength(1);
  });

  test("an edit cancels the run, and what it gives is dropped however it ended", () => {
    for (const answer of [tried("of the old text"), { kind: "cancelled" } as const]) {
      const { queue, workers, ended } = startedQueue();
      queue.want("/p", textsOf("old"));
      queue.edited("/p");
      expect(workers.last.isCancelled).toBe(true);
      workers.last.answer(answer);
      expect(ended).toEqual([]);
      expect(workers.last.requests).toHaveLength(1);
    }
  });

  test("newer texts take the place of those that run and of those that wait", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("first"));
    queue.want("/p", textsOf("second"));
    queue.want("/p", textsOf("third"));
    expect(workers.last.isCancelled).toBe(true);
    workers.last.answer(tried("of the first"));
    expect(workers.last.request.texts).toEqual(textsOf("third"));
    workers.last.answer(tried("of the third"));
    expect(ended).toEqual([["/p", "third", tried("of the third")]]);
  });

  test("a project that is gone is not tried, and its run is cancelled", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("p"));
    queue.want("/q", textsOf("q"));
    queue.drop("/q");
    queue.drop("/p");
    expect(workers.last.isCancelled).toBe(true);
    workers.last.answer(tried("of p"));
    expect(workers.last.requests).toHaveLength(1);
    expect(ended).toEqual([]);
  });
});

describe("a worker that fails", () => {
  test("it is ended when it does not answer in time, and the next project has another", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("p"));
    queue.want("/q", textsOf("q"));
    vi.advanceTimersByTime(longestTrial - 1);
    expect(workers.last.isEnded).toBe(false);
    vi.advanceTimersByTime(1);
    expect(workers.started).toHaveLength(2);
    const [silent, fresh] = workers.started;
    expect([silent?.isEnded, fresh?.isEnded]).toEqual([true, false]);
    expect(ended).toEqual([
      ["/p", "p", { kind: "failed", why: `it took longer than ${longestTrial / 1000} s` }],
    ]);
    // What the first one says after its end is nobody's answer.
    silent?.answer(tried("of p, too late"));
    silent?.die("ended");
    fresh?.answer(tried("of q"));
    expect(ended.at(-1)).toEqual(["/q", "q", tried("of q")]);
    expect(workers.started).toHaveLength(2);
  });

  test("an answer in time stops the clock", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("p"));
    vi.advanceTimersByTime(longestTrial - 1);
    workers.last.answer(tried("of p"));
    vi.advanceTimersByTime(longestTrial);
    expect(workers.last.isEnded).toBe(false);
    expect(ended).toHaveLength(1);
  });

  test("one that dies fails what it ran and nothing else", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("p"));
    queue.want("/q", textsOf("q"));
    workers.last.die("it needed too much");
    expect(workers.started).toHaveLength(2);
    workers.last.answer(tried("of q"));
    expect(ended).toEqual([
      ["/p", "p", { kind: "failed", why: "it needed too much" }],
      ["/q", "q", tried("of q")],
    ]);
  });

  test("one that dies idle is replaced when there is something to try again", () => {
    const { queue, workers, ended, log } = startedQueue();
    queue.want("/p", textsOf("p"));
    workers.last.answer(tried("of p"));
    workers.last.die("killed");
    expect(workers.started).toHaveLength(1);
    expect(log).toEqual(["the worker that tries firmware ended: killed"]);
    queue.want("/p", textsOf("p2"));
    workers.last.answer(tried("of p2"));
    expect(workers.started).toHaveLength(2);
    expect(ended).toHaveLength(2);
  });

  test("one that ignores that it is cancelled is ended in time too, and nobody waits for its answer", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("old"));
    queue.edited("/p");
    queue.want("/p", textsOf("new"));
    vi.advanceTimersByTime(longestTrial);
    expect(workers.started.map(({ isEnded }) => isEnded)).toEqual([true, false]);
    workers.last.answer(tried("of the new text"));
    expect(ended).toEqual([["/p", "new", tried("of the new text")]]);
  });

  test("one that cannot be started fails each project once", () => {
    const ended: string[] = [];
    const queue = new TrialQueue(
      () => {
        throw new Error("no threads here");
      },
      {
        ended: ({ project }, end) => ended.push(`${project} ${end.kind === "failed" ? end.why : ""}`),
        log: () => undefined,
      },
    );
    queue.want("/p", textsOf(""));
    queue.want("/q", textsOf(""));
    expect(ended).toEqual(["/p no threads here", "/q no threads here"]);
  });

  test("stopping ends the worker, and none is started after it", () => {
    const { queue, workers, ended } = startedQueue();
    queue.want("/p", textsOf("p"));
    queue.stop();
    expect(workers.last.isEnded).toBe(true);
    workers.last.die("ended");
    queue.want("/q", textsOf("q"));
    vi.advanceTimersByTime(longestTrial);
    expect(workers.started).toHaveLength(1);
    expect(ended).toEqual([]);
  });
});

describe("where no memory can be shared, as in a page that is not isolated", () => {
  beforeEach(() => {
    vi.stubGlobal("SharedArrayBuffer", undefined);
  });
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  test("a run that is not wanted any more ends with its worker, and another begins the next", () => {
    const { queue, workers, ended, log } = startedQueue();
    queue.want("/p", textsOf("old"));
    const first = workers.last;
    expect(first.request.cancel).toBeUndefined();
    queue.edited("/p");
    expect(first.isEnded).toBe(true);
    expect(workers.started).toHaveLength(1);
    queue.want("/p", textsOf("new"));
    expect(workers.started).toHaveLength(2);
    first.answer(tried("of old"));
    workers.last.answer(tried("of new"));
    expect(ended).toEqual([["/p", "new", tried("of new")]]);
    expect(log).toEqual([]);
  });

  test("a worker that nobody takes back answers one run after the other", () => {
    const { queue, workers } = startedQueue();
    queue.want("/p", textsOf("p"));
    workers.last.answer(tried("of p"));
    queue.want("/q", textsOf("q"));
    workers.last.answer(tried("of q"));
    expect(workers.started).toHaveLength(1);
    expect(workers.last.isEnded).toBe(false);
  });
});
