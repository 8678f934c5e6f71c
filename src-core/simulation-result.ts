import type { Time } from "./bench/time/time.ts";
import type { Verdict } from "./bench/verdicts/verdict.ts";
import type { Span } from "./finding.ts";
import type { RunDetails } from "./run-details.ts";

/** What a firmware is to be run with; the first of each kind where nothing is said. */
export interface SimulationChoice {
  readonly stroke: string | undefined;
  readonly mouse: string | undefined;
  readonly pc: string | undefined;
  /** Any whole number; jitter and noise come from it. */
  readonly seed: number;
}

/** What there is to choose from, the one that is run where nothing is said first. */
export interface RunChoices {
  /** The firmware's folder. */
  readonly root: string;
  readonly strokes: readonly Named[];
  readonly mice: readonly Named[];
  readonly pcs: readonly Named[];
}

/** What running a whole firmware between a mouse and a PC gives: plain data for the front ends. */
export type SimulationResult =
  /** In one sentence, what has to be said or chosen first. */
  | { readonly kind: "cannot"; readonly message: string }
  | { readonly kind: "run"; readonly run: SimulatedRun };

export interface SimulatedRun {
  readonly stroke: Named;
  readonly mouse: Named;
  readonly pc: Named;
  readonly layout: string;
  readonly seed: number;
  /** Length of the run in picoseconds. */
  readonly ended: Time;
  /** False where mouse and PC were never both ready for the stroke. */
  readonly strokeBegan: boolean;
  readonly verdict: Verdict;
  /** Why the code did nothing more before the run was over; undefined where it went on. */
  readonly stopped: { readonly message: string; readonly span: Span | undefined } | undefined;
  /** Registers that the firmware writes and the bench knows nothing of, in words. */
  readonly notSimulated: readonly string[];
  /** Where the mouse's reports lead, and where those that the PC took do; both begin at 0, 0. */
  readonly sent: readonly PathPoint[];
  readonly received: readonly PathPoint[];
  readonly details: RunDetails;
}

export interface Named {
  readonly name: string;
  readonly title: string;
}

/** Counts to the right and upwards. */
export interface PathPoint {
  readonly x: number;
  readonly y: number;
}

/** Whether the firmware did all that it should. */
export function hasPassed({
  verdict,
  stopped,
  strokeBegan,
}: Pick<SimulatedRun, "verdict" | "stopped" | "strokeBegan">): boolean {
  return verdict.failures.length === 0 && stopped === undefined && strokeBegan;
}
