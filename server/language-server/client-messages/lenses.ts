import type { LineValuesResult } from "../../../src-core/line-values.ts";
import type { FunctionName, Movement, RunChoice } from "../../../src-core/trial-details.ts";

export type { OfferedMovement } from "../../../src-core/trial-details.ts";

/**
 * Commands of the client that lenses carry, for a client whose `initializationOptions` hold `"lensCommands": true`; lenses are
 * plain text for others. The one argument is a `ReportSubject`, for `chooseMovementCommand` a `MovementSubject`, for
 * `chooseRunCommand` a `RunSubject`.
 */
export const chooseMovementCommand = "edgewise.chooseMovement";
export const showLineValuesCommand = "edgewise.showLineValues";
export const chooseRunCommand = "edgewise.chooseRun";

/** An encoder or decoder. */
export interface ReportSubject {
  /** The project's id. */
  readonly project: string;
  readonly subject: FunctionName;
  /** Id of the layout. */
  readonly layout: string;
}

/** The same, and what is shown of it. */
export interface MovementSubject extends ReportSubject {
  /** The movement in words, as an `OfferedMovement` has it or has it at its end; left out where none was tried. */
  readonly given?: string;
}

/** A firmware. */
export interface RunSubject {
  readonly project: string;
  /** The run that is shown; left out where there is none. */
  readonly shown?: RunChoice;
}

/** Request with a `ReportSubject`: movements to choose from, as an `OfferedMovement[]`. */
export const movementsRequest = "edgewise/movements";

/** Request with a `MovementChosen`: has the function tried with it; the lens tells what came. Its answer is `null`. */
export const chooseMovementRequest = "edgewise/chooseMovement";

export type MovementChosen = ReportSubject & { readonly movement: Movement };

/** Request with a `RunChosen`: has the firmware run so; a lens tells the verdict. Its answer is `null`. */
export const chooseRunRequest = "edgewise/chooseRun";

export interface RunChosen {
  readonly project: string;
  readonly choice: RunChoice;
}

/** Request with a `ReportSubject`: what each line of an encoder stored, as a `LineValuesAnswer`. */
export const lineValuesRequest = "edgewise/lineValues";

export type LineValuesAnswer =
  | { readonly kind: "page"; readonly markdown: string }
  | Extract<LineValuesResult, { kind: "cannot" }>;
