import type { SerialReport } from "../../pcs/reports/report-receiver.ts";
import type { RunPc } from "../../run-record.ts";
import type { Time } from "../../time/time.ts";
import type { Incoming } from "./incoming.ts";

/**
 * One session of the PC: what it took, and which of the mouse's reports it may have been. What came before the session
 * may be kept or forgotten, back to the session before; where the PC ends it, the rest is not sent any more.
 */
export interface Part {
  readonly out: readonly SerialReport[];
  readonly incoming: readonly Incoming[];
  /** So many of `incoming` came before the session. */
  readonly early: number;
  /** So many of those came while the session before lasted: what was not sent by its end may be sent in this one. */
  readonly ofBefore: number;
  /** The PC ended it. */
  readonly isCut: boolean;
  readonly ended: Time;
}

export function partsOf(incoming: readonly Incoming[], pc: RunPc, ended: Time): readonly Part[] {
  return pc.sessions.map(({ from, to }, index): Part => {
    const before = pc.sessions[index - 1];
    const until = to ?? ended;
    const here = incoming.filter(({ time }) => time > (before?.from ?? 0) && time <= until);
    const upTo = (moment: Time): number => here.filter(({ time }) => time <= moment).length;
    return {
      out: pc.reports.filter(({ time }) => time > from && time <= until),
      incoming: here,
      early: upTo(from),
      ofBefore: upTo(before?.to ?? 0),
      isCut: to !== undefined,
      ended: until,
    };
  });
}
