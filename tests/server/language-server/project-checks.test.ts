import { expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver/node";
import type { CheckStatus } from "../../../server/language-server/client-messages/status.ts";
import { ProjectChecks } from "../../../server/language-server/project-checks.ts";
import { WorkspaceFiles } from "../../../server/language-server/workspace-files.ts";
import type { CheckResult } from "../../../src-core/check-result.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import type { Service, TrialResult } from "../../../src-core/service/service.ts";
import { noTrials } from "./no-trials.ts";
import { resultSaying } from "./trials/fake-worker.ts";

const texts = { "/p/a.c": "int a;", "/p/b.c": "int b;" };
const nothing: CheckResult = { findings: [], notUnderstood: [], settingsFaults: [], files: [], checked: [] };

function resultWith(file: string, ...messages: string[]): CheckResult {
  const findings = messages.map((message) => ({
    rule: "board/clock-unknown",
    severity: "warning" as const,
    span: { file, start: 0, end: 1 },
    message,
    related: [],
    fixes: [],
  }));
  return { ...nothing, findings, files: [file] };
}

/** Project checks over a service that answers from `results`, and a record of what they tell. */
function checksOver(results: Map<string, CheckResult | Error>, trials = noTrials) {
  const asked: string[] = [];
  const forgotten: string[] = [];
  const service: Service = {
    projectsAt: () => [],
    check(root) {
      asked.push(root);
      const result = results.get(root) ?? nothing;
      if (result instanceof Error) throw result;
      return result;
    },
    forget: (project) => forgotten.push(project),
    hover: () => undefined,
    inlayHints: () => [],
    notes: () => ({ proposals: [], untold: [] }),
    complete: () => [],
    tryOut: () => undefined,
    runWhole: () => undefined,
    choose: () => undefined,
    lenses: () => [],
    lineValues: () => ({ kind: "cannot", message: "" }),
    movementsFor: () => [],
    takeOver: (root, { findings }) => {
      const read = results.get(root);
      if (read === undefined || read instanceof Error) return;
      results.set(root, { ...read, findings: [...read.findings, ...findings] });
    },
    simulate: () => ({ kind: "cannot", message: "" }),
    runChoices: () => undefined,
    planMatrix: () => ({ kind: "cannot", message: "" }),
    runCell: () => ({ mouse: "", pc: "", outcomes: [] }),
    actions: () => [],
  };
  const published: [file: string, messages: string[]][] = [];
  const told: CheckStatus[] = [];
  const faults: string[] = [];
  const dropped: string[] = [];
  let lensChanges = 0;
  const checks = new ProjectChecks(service, new WorkspaceFiles(hostOfFiles(texts)), trials, {
    publish: (file: string, diagnostics: readonly Diagnostic[]) => {
      published.push([file, diagnostics.map(({ message }) => String(message))]);
    },
    status: (status) => told.push(status),
    log: (message) => faults.push(message),
    dropped: (project) => dropped.push(project),
    lensesChanged: () => {
      lensChanges += 1;
    },
    pageUriOf: () => undefined,
  });
  return { checks, asked, forgotten, dropped, published, told, faults, lensChanges: () => lensChanges };
}

test("a finding that goes away is taken from the editor, and what stays is not sent again", async () => {
  const results = new Map<string, CheckResult | Error>([["/p", resultWith("/p/a.c", "one")]]);
  const { checks, published } = checksOver(results);
  await checks.request(["/p"]);
  await checks.request(["/p"]);
  results.set("/p", resultWith("/p/a.c"));
  await checks.request(["/p"]);
  expect(published).toEqual([
    ["/p/a.c", ["one"]],
    ["/p/a.c", []],
  ]);
});

test("a file that is no longer read loses its findings", async () => {
  const results = new Map<string, CheckResult | Error>([["/p", resultWith("/p/a.c", "one")]]);
  const { checks, published } = checksOver(results);
  await checks.request(["/p"]);
  results.set("/p", resultWith("/p/b.c"));
  await checks.request(["/p"]);
  expect(published.at(-1)).toEqual(["/p/a.c", []]);
});

test("what two projects say alike about a shared header is shown once, until both have dropped it", async () => {
  const shared = resultWith("/lib/h.h", "shared");
  const { checks, published } = checksOver(
    new Map([
      ["/p", shared],
      ["/q", shared],
    ]),
  );
  await checks.request(["/p", "/q"]);
  expect(checks.projectsWith("/lib/h.h")).toEqual(["/p", "/q"]);
  checks.drop(["/p"]);
  checks.drop(["/q"]);
  expect(published).toEqual([
    ["/lib/h.h", ["shared"]],
    ["/lib/h.h", []],
  ]);
});

test("a project asked for many times before its turn is checked once", async () => {
  const { checks, asked } = checksOver(new Map([["/p", nothing]]));
  await Promise.all([checks.request(["/p"]), checks.request(["/p"]), checks.request(["/p"])]);
  expect(asked).toEqual(["/p"]);
});

test("a check that fails is logged, and the others are done", async () => {
  const results = new Map<string, CheckResult | Error>([
    ["/broken", new Error("inner fault")],
    ["/p", resultWith("/p/a.c", "one", "two")],
  ]);
  const { checks, faults, told } = checksOver(results);
  await checks.request(["/broken", "/p"]);
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatch(/checking \/broken.*inner fault/);
  expect(told.map(({ state }) => state)).toEqual(["checking", "ready"]);
  expect(told.at(-1)).toEqual({ state: "ready", projects: 1, errors: 0, warnings: 2, infos: 0 });
});

test("what two projects share counts once", async () => {
  const shared = resultWith("/lib/h.h", "shared");
  const { checks, told } = checksOver(
    new Map([
      ["/p", shared],
      ["/q", shared],
    ]),
  );
  await checks.request(["/p", "/q"]);
  expect(told.at(-1)).toMatchObject({ projects: 2, warnings: 1 });
});

test("a project that is dropped before its turn is not checked", async () => {
  const { checks, asked } = checksOver(new Map([["/p", nothing]]));
  const done = checks.request(["/p"]);
  expect(checks.projects).toEqual(["/p"]);
  checks.drop(["/p"]);
  await done;
  expect(asked).toEqual([]);
});

test("a project that is dropped is forgotten, and whoever works on it hears of it", async () => {
  const { checks, forgotten, dropped } = checksOver(new Map([["/p", resultWith("/p/a.c", "one")]]));
  await checks.request(["/p", "/q"]);
  checks.drop(["/p"]);
  expect([forgotten, dropped]).toEqual([["/p"], ["/p"]]);
});

test("what a trial showed is told by the check after it, and counted", async () => {
  const results = new Map<string, CheckResult | Error>([["/p", resultWith("/p/a.c", "read")]]);
  const tried = { ...resultSaying(""), findings: resultWith("/p/a.c", "run").findings };
  const asked: (readonly [string, string])[][] = [];
  let known: TrialResult | undefined;
  const { checks, published, told } = checksOver(results, {
    ...noTrials,
    resultOf: (_, now) => {
      asked.push([...now]);
      return known;
    },
  });
  await checks.request(["/p"]);
  known = tried;
  await checks.request(["/p"]);
  expect(asked).toEqual([[["/p/a.c", "int a;"]], [["/p/a.c", "int a;"]]]);
  expect(published).toEqual([
    ["/p/a.c", ["read"]],
    ["/p/a.c", ["read", "run"]],
  ]);
  expect(told.at(-1)).toMatchObject({ state: "ready", warnings: 2 });
});

test("lenses change with what trials showed: once where it is new, and once where it is of older texts", async () => {
  let known: TrialResult | undefined;
  const { checks, lensChanges } = checksOver(new Map([["/p", resultWith("/p/a.c")]]), {
    ...noTrials,
    resultOf: () => known,
  });
  const changesAfter = async (result: TrialResult | undefined) => {
    known = result;
    await checks.request(["/p"]);
    return lensChanges();
  };
  const tried = resultSaying("one");
  expect(await changesAfter(undefined)).toBe(0);
  expect(await changesAfter(tried)).toBe(1);
  expect(await changesAfter(tried)).toBe(1);
  expect(await changesAfter(undefined)).toBe(2);
  expect(await changesAfter(undefined)).toBe(2);
  // The edit was taken back.
  expect(await changesAfter(tried)).toBe(3);
});

test("trials hear of edits of any file that a project reads, and of projects that are gone", async () => {
  const results = new Map<string, CheckResult | Error>([
    ["/p", resultWith("/lib/h.h")],
    ["/q", resultWith("/lib/h.h")],
    ["/r", resultWith("/r/main.c")],
  ]);
  const heard: string[] = [];
  const { checks } = checksOver(results, {
    ...noTrials,
    edited: (project) => heard.push(`edited ${project}`),
    drop: (project) => heard.push(`dropped ${project}`),
  });
  await checks.request(["/p", "/q", "/r"]);
  checks.edited("/lib/h.h");
  checks.edited("/elsewhere.c");
  checks.drop(["/r"]);
  expect(heard).toEqual(["edited /p", "edited /q", "dropped /r"]);
});
