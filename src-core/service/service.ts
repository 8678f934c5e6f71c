import type { CheckResult } from "../check-result.ts";
import type { InlayHint } from "../explain/inlay-hints.ts";
import type { Edit, Finding, NotUnderstood, Span } from "../finding.ts";
import type { Lens } from "../lens.ts";
import type { LineValuesResult } from "../line-values.ts";
import type { CellChoice, CellResult, MatrixChoice, MatrixPlanResult } from "../matrix-result.ts";
import type { EncoderProposal, ProposedNotes } from "../note-proposal.ts";
import type { Completion, CompletionKind, Hover } from "../notes/completion/completion.ts";
import type { RunChoices, SimulationChoice, SimulationResult } from "../simulation-result.ts";
import type {
  ChosenRun,
  FunctionName,
  OfferedMovement,
  RunsInBrief,
  TrialChoices,
  TrialFailure,
  TriedReport,
} from "../trial-details.ts";

export type { Completion, CompletionKind, Hover };

/**
 * All that the core can do for a front end, over plain data. Paths are those of the `SourceHost`, offsets count
 * UTF-16 units. No verb throws on any source: what could not be read is said in its result.
 */
export interface Service {
  /**
   * The firmware projects at a folder and below, or the one that a file makes with the settings above it. Empty
   * where there is no firmware. Looked for anew at each call; the other verbs use what the last call found.
   */
  projectsAt(path: string): readonly ProjectEntry[];
  /** The project is gone, or of no interest any more: lets go of all that was read of it. */
  forget(project: string): void;
  /** Nothing for a project that is not known; the same for `hover`, `complete` and `actions`. */
  check(project: string): CheckResult;
  /**
   * Runs encoders and decoders, within limits; from then on `check` tells what that showed too, until a file
   * changes. `cancelled` is asked now and then; undefined when it said so, or for a project that is not known.
   */
  tryOut(project: string, cancelled?: () => boolean): TrialResult | undefined;
  /** The same, and runs the whole firmware with a few mice, at a few PCs. */
  runWhole(project: string, cancelled?: () => boolean): TrialResult | undefined;
  /** From now on both try these too, and tell of them in their results. */
  choose(project: string, choices: TrialChoices): void;
  /** Takes what either gave in another service over the same texts. */
  takeOver(project: string, result: TrialResult): void;
  /** Runs the whole firmware between a mouse and a PC; takes as long as that takes. */
  simulate(project: string, choice: SimulationChoice): SimulationResult;
  /** What a firmware can be run with, the usual ones first; undefined for a project that is not known. */
  runChoices(project: string): RunChoices | undefined;
  /** What a matrix consists of: every mouse at every PC with every stroke. */
  planMatrix(project: string, choice: MatrixChoice): MatrixPlanResult;
  /** Runs one cell of a matrix; takes as long as that takes. */
  runCell(project: string, choice: CellChoice): CellResult;
  /** Notes that would describe the firmware; runs what `tryOut` runs, where that was not done yet. */
  notes(project: string): ProposedNotes;
  hover(project: string, file: string, offset: number): Hover | undefined;
  /** Words behind numbers of a file, those between two offsets. */
  inlayHints(project: string, file: string, from: number, to: number): readonly InlayHint[];
  /** What there is to show above functions of a file: the last results, marked where they are of older texts. */
  lenses(project: string, file: string): readonly Lens[];
  /** What each line of an encoder stored, with the movement that was tried last. */
  lineValues(project: string, subject: FunctionName): LineValuesResult;
  /** Movements worth a look with a layout, each once: some that are usual, and the fastest of each stroke. */
  movementsFor(project: string, layout: string): readonly OfferedMovement[];
  complete(project: string, file: string, offset: number): readonly Completion[];
  actions(project: string, span: Span): readonly Action[];
}

/** What running the firmware showed: plain data. */
export interface TrialResult {
  readonly findings: readonly Finding[];
  readonly notUnderstood: readonly NotUnderstood[];
  /** Notes for functions that work like encoders. */
  readonly proposals: readonly EncoderProposal[];
  /** Every encoder and decoder was run. Else an `allow` that allowed nothing may be right all the same. */
  readonly whole: boolean;
  /** The same for runs of the whole firmware; false where there are none to make. */
  readonly ran: boolean;
  /** One for each encoder and decoder that has a note without fault. */
  readonly reports: readonly TriedReport[];
  /** Undefined before the firmware was run whole, and where it does not mean to be a whole one. */
  readonly wholeRuns: RunsInBrief | undefined;
  /** The run that somebody asked for; undefined until it was made. */
  readonly chosenRun: ChosenRun | undefined;
  /** Undefined where the trial came to its end, or is still on. */
  readonly failure: TrialFailure | undefined;
}

/** A project as front ends name it. */
export interface ProjectEntry {
  /** Stays the same as files come and go. */
  readonly id: string;
  readonly root: string;
  /** It has an edgewise.json. */
  readonly configured: boolean;
  /** How many translation units it has. */
  readonly units: number;
}

export interface Action {
  readonly title: string;
  /**
   * A fix removes the finding; `allow` accepts it with a note that gives a reason; `note` writes a note that would have
   * something checked.
   */
  readonly kind: "fix" | "allow" | "note";
  readonly edits: readonly Edit[];
  /** The finding that it answers; undefined for a fault of edgewise.json and where none is needed. */
  readonly finding: Finding | undefined;
}
