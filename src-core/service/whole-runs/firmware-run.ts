import { judgeRun } from "../../bench/verdicts/judge-run.ts";
import type { FirmwareRun } from "../../firmware-run.ts";
import type { ProjectReading } from "../project-reading.ts";
import { type Around, named, type RecordedRun, stopOf } from "../simulation/run-on-bench.ts";
import { placeOfFault } from "./place-of-fault.ts";

/** A run as rules read it. */
export function firmwareRun(
  reading: ProjectReading,
  { mouse, pc, stroke }: Pick<Around, "mouse" | "pc" | "stroke">,
  { run, end, strokeBegan }: Pick<RecordedRun, "run" | "end" | "strokeBegan">,
): FirmwareRun {
  const stopped = stopOf(end);
  // What goes wrong behind the end of the code follows from it.
  const faults = stopped === undefined ? judgeRun(run).failures : [];
  return {
    mouse: named(mouse),
    pc: named(pc),
    stroke: named(stroke),
    faults: faults.map((fault) => ({ ...fault, span: placeOfFault(fault, run, reading) })),
    stopped: stopped?.message,
    strokeBegan: strokeBegan !== undefined,
  };
}
