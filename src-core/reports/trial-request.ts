import type { Program } from "../reader/program/program.ts";
import type { At, FunctionSymbol, TypedUnit } from "../reader/typed/nodes.ts";
import type { ReportTrial } from "./report-trial.ts";

/** A function that is to be tried. */
export interface Request {
  readonly program: Program;
  /** The unit whose names a note may use. */
  readonly unit: TypedUnit;
  /** With its body. */
  readonly symbol: FunctionSymbol;
  /** Asked now and then; true ends the trial. */
  readonly cancelled: (() => boolean) | undefined;
}

/** Something that was noticed on the way, at its place. */
export interface Met {
  readonly message: string;
  readonly at: At;
}

/** What running it over its inputs gave. */
export interface Tried extends Pick<ReportTrial, "found" | "faults" | "returnsLength" | "calls"> {
  readonly met: readonly Met[];
}
