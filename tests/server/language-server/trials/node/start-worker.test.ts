import { afterEach, expect, test, vi } from "vitest";
import { cancel, newCancelFlag } from "../../../../../server/language-server/trials/cancel-flag.ts";
import { workersRunning } from "../../../../../server/language-server/trials/node/start-worker.ts";
import { trialRole } from "../../../../../server/language-server/trials/node/trial-role.ts";
import type { TrialWorker } from "../../../../../server/language-server/trials/trial-worker.ts";
import { noChoices } from "../../../../../src-core/trial-details.ts";

const workers: TrialWorker[] = [];

afterEach(() => {
  for (const worker of workers.splice(0)) worker.end();
});

/** A worker that runs one of the programs beside this file, and what it reports. */
function running(program: string) {
  const reports: string[] = [];
  let heard: () => void = () => undefined;
  const report = (text: string) => {
    reports.push(text);
    heard();
  };
  const megabytes = 32;
  const start = workersRunning(new URL(`programs/${program}.mjs`, import.meta.url), megabytes);
  const worker = start({
    answered: (answer) => report(answer.kind === "failed" ? `failed: ${answer.why}` : answer.kind),
    ended: (why) => report(`ended: ${why}`),
  });
  workers.push(worker);
  const next = async () => {
    const known = reports.length;
    while (reports.length === known) {
      await new Promise<void>((resolve) => {
        heard = resolve;
      });
    }
    return reports.at(-1);
  };
  return { worker, reports, next };
}

const request = (project: string) => ({
  project,
  texts: new Map([["a", "b"]]),
  choices: noChoices,
  cancel: newCancelFlag(),
});

test("requests and answers cross, the program knows its role, and what it prints goes nowhere", async () => {
  const written = [vi.spyOn(process.stdout, "write"), vi.spyOn(process.stderr, "write")];
  const { worker, next } = running("echo");
  for (let count = 0; count < 3; count++) {
    worker.post(request("p"));
    expect(await next()).toBe(`failed: ${trialRole} 1`);
  }
  expect(written.flatMap(({ mock }) => mock.calls).map(([text]) => String(text))).not.toContain("noise");
  vi.restoreAllMocks();
});

test("a flag that is raised while it runs is seen", async () => {
  const { worker, next } = running("endless");
  const asked = request("p");
  worker.post(asked);
  cancel(asked.cancel);
  expect(await next()).toBe("cancelled");
});

test.each([
  ["hungry", "ended: it needed more than 32 MB of memory"],
  ["throwing", "ended: inner fault"],
  ["leaving", "ended: the thread that runs it ended with code 3"],
  ["not-there", /^ended: .*not-there/],
])("one that ends by itself says why: %s", async (program, expected) => {
  const { worker, reports, next } = running(program);
  worker.post(request("p"));
  const said = await next();
  if (typeof expected === "string") expect(said).toBe(expected);
  else expect(said).toMatch(expected);
  expect(reports).toHaveLength(1);
});

test("one that listens to nothing can be ended, and reports nothing after it", async () => {
  const { worker, reports } = running("endless");
  const other = running("endless");
  worker.post(request("deaf"));
  worker.end();
  const asked = request("p");
  other.worker.post(asked);
  cancel(asked.cancel);
  expect(await other.next()).toBe("cancelled");
  expect(reports).toEqual([]);
});
