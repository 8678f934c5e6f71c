import { expect, test } from "vitest";
import type { CancellationToken } from "vscode";
import { heldRun, type Runner, whyNot } from "../../client/held-run.ts";
import type { RunAnswer, RunOverview } from "../../server/language-server/client-messages/runs.ts";

const params = { project: "/ferry", stroke: "nudge", mouse: "plain", pc: "rts-toggle" };
const answered: RunAnswer = { kind: "run", run: 7, root: "file:///ferry", overview: {} as RunOverview };

/** A server that does as the test says, and what it was told. */
class FakeRunner implements Runner {
  session = 1;
  readonly told: unknown[] = [];
  /** Called while the server is at work. */
  meanwhile: () => void = () => undefined;
  #answer: unknown = answered;

  constructor(answer: unknown = answered) {
    this.#answer = answer;
  }

  async request<Answer>(): Promise<Answer | undefined> {
    this.meanwhile();
    return this.#answer as Answer;
  }

  ask<Answer>(): Promise<Answer | undefined> {
    return this.request();
  }

  async notify(method: string, told: object): Promise<void> {
    this.told.push([method, told]);
  }
}

function token(): CancellationToken & { isCancellationRequested: boolean } {
  return { isCancellationRequested: false, onCancellationRequested: () => ({ dispose() {} }) };
}

test("a run that is cancelled when its answer is on the way is let go of", async () => {
  const runner = new FakeRunner();
  const cancelled = token();
  runner.meanwhile = () => {
    cancelled.isCancellationRequested = true;
  };
  expect(await heldRun(runner, params, cancelled)).toBeUndefined();
  expect(runner.told).toEqual([["edgewise/closeRun", { run: 7 }]]);
});

test("a run is that of the server that was asked, not of one that came meanwhile", async () => {
  const runner = new FakeRunner();
  runner.meanwhile = () => {
    runner.session = 2;
  };
  const run = await heldRun(runner, params, token());
  if (run?.kind !== "run") throw new Error("there is no run");
  expect(await run.panel({ from: 0, to: 1, columns: 9 })).toBeUndefined();
  run.close();
  expect(runner.told).toEqual([]);
});

test("only of a server that is gone it is said that it was restarted", () => {
  expect(whyNot({ kind: "cannot", message: "it took too much memory" })).toBe(
    "The checker could not answer: it took too much memory.",
  );
  expect(whyNot(undefined)).toContain("was restarted");
});
