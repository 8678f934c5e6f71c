import type { CheckResult } from "../check-result.ts";
import type { Edit, Finding, Span } from "../finding.ts";

/**
 * All that the core can do for a front end, over plain data. Paths are those of the `SourceHost`, offsets count
 * UTF-16 units. No verb throws on any source: what could not be read is said in its result.
 */
export interface Service {
  /** Roots of the firmware projects in a folder and below, in order; empty where there is none. */
  projectsIn(folder: string): readonly string[];
  /** Root of the project that a file belongs to: the nearest one above it, but not above `top`. */
  projectOf(file: string, top: string): string | undefined;
  check(root: string): CheckResult;
  hover(root: string, file: string, offset: number): Hover | undefined;
  complete(root: string, file: string, offset: number): readonly Completion[];
  actions(root: string, span: Span): readonly Action[];
}

export interface Hover {
  readonly markdown: string;
  /** What the hover is about. */
  readonly span: Span;
}

export type CompletionKind = "directive" | "key" | "value" | "field" | "rule" | "chip" | "pin";

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** One line beside the label. */
  readonly detail: string;
  /** Markdown; empty for none. */
  readonly documentation: string;
  readonly edit: Edit;
}

export interface Action {
  readonly title: string;
  /** A fix removes the finding; `allow` accepts it; `describe` writes a note that says what was inferred. */
  readonly kind: "fix" | "allow" | "describe";
  readonly edits: readonly Edit[];
  /** The finding that it answers. */
  readonly finding: Finding | undefined;
}
