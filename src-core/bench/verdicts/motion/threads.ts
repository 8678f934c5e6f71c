import type { Run } from "../../run-record.ts";
import { FindingsOfRun } from "../findings.ts";
import { carriedBy } from "./carried.ts";
import { incomingReports } from "./incoming.ts";
import { judgeClicks } from "./judge-clicks.ts";
import { partsOf } from "./part.ts";

/** From a report of the mouse to the one that brought it to the PC, by their places in the run's two lists. */
export interface Thread {
  readonly incoming: number;
  readonly outgoing: number;
}

/**
 * All threads of a run, each once, in order of the outgoing reports. A report that says nothing new has none, and behind counts that
 * were lost there are none until a sum agrees again.
 */
export function threadsOf(run: Run): readonly Thread[] {
  const { mouse, pc, wanted } = run;
  const numbers = new Map(pc.reports.map((report, index) => [report, index]));
  const threads = new Map<string, Thread>();
  for (const part of partsOf(incomingReports(mouse, run.edges), pc, run.ended)) {
    const changes = judgeClicks(part, run, new FindingsOfRun());
    for (const { incoming, outgoing } of carriedBy(part, changes.first, changes, wanted)) {
      const thread = { incoming: incoming.index, outgoing: numbers.get(outgoing) ?? -1 };
      threads.set(`${thread.incoming} ${thread.outgoing}`, thread);
    }
  }
  return [...threads.values()].sort((a, b) => a.outgoing - b.outgoing || a.incoming - b.incoming);
}
