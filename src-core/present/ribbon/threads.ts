import type { Time } from "../../bench/time/time.ts";
import type { SimulatedRun } from "../../simulation-result.ts";
import { incomingDetail } from "./mouse-lane.ts";
import { outgoingDetail } from "./pc-lane.ts";
import type { Thread, TimeWindow } from "./ribbon.ts";
import { duration } from "./time-axis.ts";

/** All threads of a run, and how long each took: to the end of the outgoing report. */
export function threadsOfRun({
  details: { threads, incoming, outgoing },
}: SimulatedRun): readonly (Omit<Thread, "isSlowest"> & { readonly length: Time })[] {
  return threads.flatMap((thread) => {
    const one = incoming[thread.incoming];
    const other = outgoing[thread.outgoing];
    if (one?.to === undefined || other === undefined) return [];
    const length = other.to - one.to;
    return [
      {
        incoming: { from: one.from, to: one.to },
        outgoing: { from: other.from, to: other.to },
        length,
        detail: `${incomingDetail(one)} became ${outgoingDetail(other)} after ${duration(length)}`,
      },
    ];
  });
}

/** The first of those that took longest; undefined for none. */
export function slowestOf<Each extends { readonly length: Time }>(all: readonly Each[]): Each | undefined {
  return all.reduce<Each | undefined>(
    (slowest, each) => (slowest === undefined || each.length > slowest.length ? each : slowest),
    undefined,
  );
}

/** Those that touch the window; of those that begin and end within the same step of `finest`, one. */
export function threadsIn(run: SimulatedRun, { from, to }: TimeWindow, finest: Time): readonly Thread[] {
  const all = threadsOfRun(run);
  const slowest = slowestOf(all);
  const shown = new Map<string, Thread>();
  for (const each of all) {
    const { length: _, ...thread } = each;
    if (thread.outgoing.to < from || thread.incoming.from > to) continue;
    const isSlowest = each === slowest;
    const key = [thread.incoming.to, thread.outgoing.from].map((time) => Math.round(time / finest)).join(" ");
    if (isSlowest || !shown.has(key)) shown.set(key, { ...thread, isSlowest });
  }
  return [...shown.values()];
}
