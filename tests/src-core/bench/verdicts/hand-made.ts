import type { Run } from "../../../../src-core/bench/run-record.ts";
import { judgeRun } from "../../../../src-core/bench/verdicts/judge-run.ts";
import type { Edge, Level, Party, WireName } from "../../../../src-core/bench/wires/edge.ts";
import { layouts } from "../../../../src-core/model/report-layouts.ts";
import type { At } from "../../../../src-core/reader/typed/nodes.ts";

export const US = 1e6;
export const MS = 1e9;

/** A run in which nothing happened but what is said. */
export function handMade(said: Partial<Run>): Run {
  return {
    ended: 1000 * MS,
    edges: [],
    conflicts: [],
    mouse: { sent: [], received: [], reports: [], happenings: [] },
    pc: { bytes: [], answers: [], sessions: [], reports: [], discarded: [] },
    firmware: { observations: [], lastAt: undefined },
    wanted: { layout: layouts["two-button"], baud: 1200, scale: 1 },
    ...said,
  };
}

/** Rule, measured value (two digits), and where the place begins. */
export function faults(
  said: Partial<Run>,
): readonly (readonly [string, number | undefined, number | undefined])[] {
  return judgeRun(handMade(said)).failures.map(({ rule, measured, span }) => [
    rule,
    measured && Number(measured.value.toFixed(2)),
    span?.start,
  ]);
}

export function edge(time: number, wire: WireName, level: Level, party: Party, at?: At): Edge {
  return { time: Math.round(time), wire, level, cause: { party, at } };
}
