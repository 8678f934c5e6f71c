import type { CodeRecord } from "../../../bench/engines/code-trace.ts";
import type { Run } from "../../../bench/run-record.ts";
import { threadsOf } from "../../../bench/verdicts/motion/threads.ts";
import type { RunDetails } from "../../../run-details.ts";
import { framesOf, incomingOf } from "./mouse-side.ts";
import { Places } from "./places.ts";

/** What a picture of a run shows, as plain data. */
export function detailsOf(run: Run, code: CodeRecord): RunDetails {
  const places = new Places();
  return {
    places: places.spans,
    edges: run.edges.map(({ time, wire, level, cause }) => ({
      time,
      wire,
      level,
      by: cause.party,
      place: places.numberOf(cause.at),
    })),
    frames: framesOf(run),
    incoming: incomingOf(run),
    serialBytes: run.pc.bytes.map(({ from, time, value, fault }) => ({ from, to: time, byte: value, fault })),
    outgoing: run.pc.reports.map(({ from, time, bytes, values }) => ({ from, to: time, bytes, values })),
    threads: threadsOf(run),
    code: {
      spans: code.spans.map(({ at, ...span }) => ({ ...span, place: places.numberOf(at) })),
      resolution: code.resolution,
    },
  };
}
