import { plain } from "../../figures.ts";
import type { FirmwareRun, RunFault } from "../../firmware-run.ts";
import type { Draft, Trials } from "../rule.ts";

/** Picoseconds in a millisecond. */
const MS = 1e9;

/** A fault, and the runs that it showed in. */
interface Seen {
  readonly fault: RunFault;
  readonly first: FirmwareRun;
  readonly others: number;
}

/** What whole runs showed of one rule: the same fault in several runs is one draft, which names the first. */
export function draftsOfRuns(rule: string, { runs }: Trials): readonly Draft[] {
  const seen = new Map<string, Seen>();
  for (const run of runs) {
    for (const fault of run.faults) {
      if (fault.rule !== rule) continue;
      const { file, start, end } = fault.span;
      const key = JSON.stringify([file, start, end, fault.limit?.unit]);
      const before = seen.get(key);
      if (before === undefined) seen.set(key, { fault, first: run, others: 0 });
      else seen.set(key, { ...before, others: before.others + 1 });
    }
  }
  return [...seen.values()].map(draftOf);
}

function draftOf({ fault, first, others }: Seen): Draft {
  const { span, message, time, measured, limit, source } = fault;
  const { mouse, pc, stroke } = first;
  const more = others === 0 ? "" : `, and in ${others} other run${others === 1 ? "" : "s"}`;
  return {
    span,
    message: `${message} (run with mouse ${mouse.name}, PC ${pc.name}, stroke ${stroke.name}, at ${plain(time / MS, 1)} ms${more})`,
    ...(measured === undefined ? {} : { measured }),
    ...(limit === undefined ? {} : { limit }),
    ...(source === undefined ? {} : { source }),
    related: [],
    fixes: [],
  };
}
