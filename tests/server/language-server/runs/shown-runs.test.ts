import { expect, test } from "vitest";
import { CancellationToken } from "vscode-languageserver";
import type { RunReply } from "../../../../server/language-server/runs/messages.ts";
import { ShownRuns } from "../../../../server/language-server/runs/shown-runs.ts";

const choice = { stroke: "nudge", mouse: "plain", pc: "rts-toggle", seed: 1 };
const overview = {} as Extract<RunReply, { kind: "run" }>["overview"];
const kept: RunReply = { kind: "run", root: "/ferry", overview };

/** Runs whose worker gives these answers, one after the other, and then ends. */
function runsThatAnswer(replies: readonly RunReply[]): ShownRuns {
  const left = [...replies];
  return new ShownRuns(({ answered, ended }) => ({
    post() {
      const reply = left.shift();
      queueMicrotask(() => (reply === undefined ? ended("it took too much memory") : answered(reply)));
    },
    end() {},
  }));
}

async function runIn(shown: ShownRuns): Promise<number> {
  const answer = await shown.run("/ferry", new Map(), choice, CancellationToken.None);
  if (answer.kind !== "run") throw new Error(answer.message);
  return answer.run;
}

test("why a window of a run or its text is not there is what the worker says, or why it ended", async () => {
  const why: RunReply = { kind: "cannot", message: "Invalid array length" };
  const shown = runsThatAnswer([kept, why, why]);
  const run = await runIn(shown);
  expect(await shown.panel({ run, from: 0, to: 1, columns: 9 })).toEqual(why);
  expect(await shown.text({ run, format: "svg", window: undefined })).toEqual(why);
  const ended = { kind: "cannot", message: "it took too much memory" };
  expect(await shown.panel({ run, from: 0, to: 1, columns: 9 })).toEqual(ended);
});

test("a run that was closed is said not to be held", async () => {
  const shown = runsThatAnswer([kept]);
  const run = await runIn(shown);
  shown.close(run);
  expect(await shown.panel({ run, from: 0, to: 1, columns: 9 })).toMatchObject({
    kind: "cannot",
    message: expect.stringContaining("not held"),
  });
});
