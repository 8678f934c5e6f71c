import { expect, it } from "vitest";
import { consequencesOf, withoutConsequences } from "../../../../src-core/checks/runs/consequences.ts";
import type { RunFault } from "../../../../src-core/firmware-run.ts";
import { ruleIds } from "../../../../src-core/rule-ids.ts";

const fault = (rule: string): RunFault => ({
  rule,
  message: "",
  measured: undefined,
  limit: undefined,
  source: undefined,
  time: 0,
  span: { file: "a.c", start: 0, end: 1 },
  times: 1,
});
const named = (name: string) => ({ name, title: "" });
const run = (...rules: readonly string[]) => ({
  mouse: named("plain"),
  pc: named("patient"),
  stroke: named("rest"),
  faults: rules.map(fault),
  stopped: undefined,
  strokeBegan: true,
});

it("no fault is a consequence of itself, so that of any faults one is left", () => {
  for (const id of ruleIds) expect([...consequencesOf(id)], id).not.toContain(id);
});

it("names rules that there are", () => {
  const named = new Set(ruleIds.flatMap((id) => [...consequencesOf(id)]));
  for (const id of named) expect(ruleIds).toContain(id);
});

it("lost counts follow from whatever keeps reports from coming or going", () => {
  const causes = ["serial/baud-error", "ps2/request-hold-short", "ps2/clock-missed", "report/length"];
  for (const id of causes) expect(consequencesOf(id)).toContain("report/counts-lost");
});

it("consequences are left out in the run of the cause and in later ones, not in earlier ones", () => {
  const runs = [
    run("report/counts-lost"),
    run("ps2/ack-ignored", "report/counts-lost"),
    run("report/counts-lost"),
  ];
  const left = withoutConsequences(runs).map(({ faults }) => faults.map(({ rule }) => rule));
  expect(left).toEqual([["report/counts-lost"], ["ps2/ack-ignored"], []]);
});
