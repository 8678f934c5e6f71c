import type { Span } from "./finding.ts";
import type { Named } from "./simulation-result.ts";

/** What trials show beyond findings, for hovers and lenses: plain data. */

/** A function by the file of its definition and its qualified name, which stay as the text around it is edited. */
export interface FunctionName {
  readonly file: string;
  readonly name: string;
}

/** What running an encoder or decoder showed. */
export interface TriedReport {
  readonly subject: FunctionName;
  /** Id of the layout that its note names. */
  readonly layout: string;
  /** Per byte, from bit 0 upwards; empty for decoders, and where the function could not be run to the end. */
  readonly bits: readonly (readonly FoundBit[])[];
  /** It could be run over all its inputs. */
  readonly wasRun: boolean;
  /** The movement that was chosen for it, or that of its note, through its code. */
  readonly movement: MovementRun;
}

/** What the code puts into one bit. */
export interface FoundBit {
  /** As the rows of layouts write it; `-y7` for a bit of the opposite, `?` for nothing as simple as that. */
  readonly word: string;
  readonly isRequired: boolean;
}

/** A hand's movement, in counts of the mouse, with the buttons that are held. */
export interface Movement {
  /** Negative is left. */
  readonly right: number;
  /** Downwards on the screen; negative is up. */
  readonly down: number;
  /** Steps towards the user. */
  readonly wheel: number;
  readonly press: readonly MovementButton[];
}

export type MovementButton = "left" | "right" | "middle" | "button4" | "button5";

/** One movement through an encoder or decoder. */
export interface MovementRun {
  /** What of the movement the function is given, in words: `right 12 down 5, left pressed`. */
  readonly given: string;
  readonly outcome: MovementOutcome;
}

export type MovementOutcome =
  /** In one sentence without its full stop. */
  | { readonly kind: "cannot"; readonly why: string }
  | {
      readonly kind: "ran";
      /** Bytes of an encoder, the movement in words that a decoder gave. */
      readonly came: string;
      /** `allowed` is another way of saying as much as one report carries, as cutting off earlier. */
      readonly judgement: "right" | "allowed" | "wrong";
      /** What the layout would have. */
      readonly right: string;
      /** Every value that a byte of the report was given, in order; empty for decoders. */
      readonly stores: readonly ByteStore[];
    };

export interface ByteStore {
  /** From 0. */
  readonly byte: number;
  readonly value: number;
  /** What stored it; undefined where that is not known. */
  readonly span: Span | undefined;
}

/** Runs of the whole firmware. */
export interface RunsInBrief {
  /** Those of every check. */
  readonly runs: readonly RunVerdict[];
  /** Why there are none, or not all. */
  readonly notRun: string | undefined;
}

export interface RunVerdict {
  readonly mouse: Named;
  readonly pc: Named;
  readonly stroke: Named;
  /** Messages, in order of time; of faults that are not accepted. */
  readonly faults: readonly string[];
  /** How many more there are that are: allowed by a note, or their rule is off. */
  readonly accepted: number;
  /** Why the code could not be run to the end. */
  readonly stopped: string | undefined;
  /** False where mouse and PC were never both ready for the stroke. */
  readonly strokeBegan: boolean;
}

/** A run that somebody asks for, by names. */
export interface RunChoice {
  readonly mouse: string;
  readonly pc: string;
  readonly stroke: string;
}

/** Why there is less to show than there might be: what ran the firmware gave up. */
export interface TrialFailure {
  /** Fits behind "the firmware could not be tried:". */
  readonly why: string;
  /** Encoders and decoders had been run by then. */
  readonly partsRan: boolean;
}

/** What somebody wants to see tried in a project, besides what is tried anyway. */
export interface TrialChoices {
  readonly movements: readonly { readonly subject: FunctionName; readonly movement: Movement }[];
  readonly run: RunChoice | undefined;
}

/** What became of it. */
export type ChosenRun =
  | { readonly kind: "cannot"; readonly choice: RunChoice; readonly message: string }
  | { readonly kind: "run"; readonly choice: RunChoice; readonly verdict: RunVerdict };

export const noChoices: TrialChoices = { movements: [], run: undefined };

/** A movement to choose, in words. */
export interface OfferedMovement {
  readonly given: string;
  readonly movement: Movement;
}
