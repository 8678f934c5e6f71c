import type { Failure } from "./bench/verdicts/verdict.ts";
import type { Span } from "./finding.ts";
import type { Named } from "./simulation-result.ts";

/** What a whole run of the firmware between a mouse and a PC showed, as rules read it: plain data. */
export interface FirmwareRun {
  readonly mouse: Named;
  readonly pc: Named;
  readonly stroke: Named;
  /** In order of time, without what follows from another of them. */
  readonly faults: readonly RunFault[];
  /** Why the code could not be run to the end. */
  readonly stopped: string | undefined;
  /** False where mouse and PC were never both ready for the stroke. */
  readonly strokeBegan: boolean;
}

/** A failure of a run at the best place that there is for it. */
export type RunFault = Failure & { readonly span: Span };
