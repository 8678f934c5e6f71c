import type { Span } from "../finding.ts";

/** Findings that were accepted as they were at one time. */
export interface Baseline {
  /** Its path, as findings name files. */
  readonly file: string;
  readonly text: string;
  readonly entries: readonly BaselineEntry[];
}

/** Findings of one rule in lines that read alike. */
export interface BaselineEntry {
  readonly rule: string;
  /** As findings name files. */
  readonly file: string;
  /** The line that a finding begins on, each run of white space as one space, none at the ends. */
  readonly text: string;
  /** How many findings are accepted; at least 1. */
  readonly times: number;
  /** Where it stands in the baseline. */
  readonly span: Span;
}

/** How one file names another: as seen from the baseline, or as findings do. */
export type Rename = (file: string) => string;
