import type { Edit, Span } from "../../finding.ts";

export type CompletionKind = "directive" | "key" | "value" | "field" | "rule" | "chip" | "pin";

/** One thing that may be written at the cursor. */
export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** One line beside the label. */
  readonly detail: string;
  /** Markdown; empty for none. */
  readonly documentation: string;
  readonly edit: Edit;
}

/** What a word means, and the word. */
export interface Hover {
  readonly markdown: string;
  readonly span: Span;
}

/** A completion before its place is known. */
export interface Proposal {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail: string;
  readonly documentation: string;
  /** What is written, where it is not the label alone. */
  readonly text?: string;
}

export function placed(proposals: readonly Proposal[], span: Span): readonly Completion[] {
  return proposals.map(({ label, kind, detail, documentation, text = label }) => ({
    label,
    kind,
    detail,
    documentation,
    edit: { span, text },
  }));
}
