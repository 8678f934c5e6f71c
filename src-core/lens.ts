import type { Span } from "./finding.ts";
import type { ChosenRun, FunctionName, MovementRun, RunsInBrief } from "./trial-details.ts";

/** What stands above a function in the editor: plain data. */
export type Lens = ReportLens | FirmwareLens;

interface LensBase {
  /** The function's name. */
  readonly span: Span;
  /** It is of the texts before the last edit. */
  readonly isStale: boolean;
  /** Why there is nothing to show, where a trial of these texts failed. */
  readonly failure: string | undefined;
}

/** A movement through an encoder or decoder. */
export interface ReportLens extends LensBase {
  readonly kind: "report";
  readonly subject: FunctionName;
  readonly builds: boolean;
  /** Id of the layout. */
  readonly layout: string;
  /** Undefined before the function was tried, and where its note is at fault. */
  readonly movement: MovementRun | undefined;
}

/** Runs of the whole firmware; both undefined before there was one. */
export interface FirmwareLens extends LensBase {
  readonly kind: "firmware";
  readonly runs: RunsInBrief | undefined;
  readonly chosen: ChosenRun | undefined;
}
