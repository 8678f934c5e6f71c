import type { Span } from "./finding.ts";
import type { LayoutName } from "./model/layouts/layout.ts";

/** A wire note that would say what was inferred from the code, or have something checked. Plain data. */
export interface NoteProposal {
  /** What it is about: a function's name, the place that a pin was told by. */
  readonly span: Span;
  /** Why: "`build` works like an encoder of two-button reports". */
  readonly reason: string;
  /** `@wire encodes ...`. */
  readonly note: string;
  /** Where a comment with the note belongs: the start of a declaration, or of a file. Empty span. */
  readonly before: Span;
}

/** A note for a function that works like an encoder. */
export interface EncoderProposal extends NoteProposal {
  readonly layout: LayoutName;
}

/** All notes that would describe a firmware, and what only its author can say. */
export interface ProposedNotes {
  /** Those of a declaration before those of the whole project. */
  readonly proposals: readonly NoteProposal[];
  /** What the code does not tell, each with the word that says it: "the chip (`@wire board atmega328p`)". */
  readonly untold: readonly string[];
}
