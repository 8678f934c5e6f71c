import { expect, it } from "vitest";
import {
  consequencesOf,
  explainedElsewhere,
  withoutConsequences,
} from "../../../../src-core/checks/runs/consequences.ts";
import type { FirmwareRun, RunFault } from "../../../../src-core/firmware-run.ts";
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
const leftOf = (runs: readonly FirmwareRun[]) =>
  withoutConsequences(runs).map(({ faults }) => faults.map(({ rule }) => rule));
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

it("a byte of which the handler sends no bit follows from the handler that never runs", () => {
  expect(consequencesOf("board/pin-no-interrupt")).toContain("ps2/parity-wrong");
});

it("movements that come out as others look like reports that were taken wrongly", () => {
  const causes = ["report/y-direction", "report/sign-lost", "report/layout", "report/clip-missing"];
  for (const id of causes) expect(consequencesOf(id)).toContain("ps2/parity-unchecked");
});

it("consequences are left out in the run of the cause and in later ones, not in earlier ones", () => {
  const runs = [
    run("report/counts-lost"),
    run("ps2/clock-missed", "report/counts-lost"),
    run("report/counts-lost"),
  ];
  expect(leftOf(runs)).toEqual([["report/counts-lost"], ["ps2/clock-missed"], []]);
});

it("counts that get lost once mouse and PC are set up are no consequence of setting up in another run", () => {
  const runs = [
    run("ps2/ack-ignored", "report/counts-lost"),
    run("serial/throughput"),
    run("report/counts-lost"),
  ];
  expect(leftOf(runs)).toEqual([["ps2/ack-ignored"], ["serial/throughput"], ["report/counts-lost"]]);
  expect(explainedElsewhere("serial/ident-wrong")).not.toContain("report/counts-lost");
  expect(explainedElsewhere("serial/baud-error")).toContain("report/counts-lost");
});

it("a disturbance is not to blame where counts get lost without one, whichever run comes first", () => {
  const disturbed = ["ps2/packet-resync", "report/counts-lost"];
  expect(leftOf([run(...disturbed), run("report/counts-lost")])).toEqual([[], ["report/counts-lost"]]);
  expect(leftOf([run(...disturbed), run("ps2/parity-unchecked")])).toEqual([["ps2/packet-resync"], []]);
});

it("an axis that is turned over explains counts that do not agree, in other runs as well", () => {
  expect(leftOf([run("report/y-direction"), run("report/counts-lost"), run("ps2/packet-resync")])).toEqual([
    ["report/y-direction"],
    [],
    [],
  ]);
});
