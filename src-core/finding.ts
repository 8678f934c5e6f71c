/**
 * What crosses the border from the core to its front ends about one fault: plain data, ready to be
 * serialised, compared in a test or drawn by an editor.
 */

/** `error` and `warning` fail a check; `info` is advice. */
export type Severity = "error" | "warning" | "info";

/** A rule's level in edgewise.json: a severity, or `off`. */
export type RuleLevel = Severity | "off";

/** Half-open range of UTF-16 offsets in one file of the project. */
export interface Span {
  /** Path as the `SourceHost` knows it, with `/`. */
  readonly file: string;
  readonly start: number;
  readonly end: number;
}

/** Units that a quantity of the model or a measured figure can carry. */
export type Unit =
  | "s"
  | "ms"
  | "us"
  | "ns"
  | "Hz"
  | "kHz"
  | "MHz"
  | "baud"
  | "bits"
  | "bytes"
  | "byte/s"
  | "counts"
  | "count/mm"
  | "count/inch"
  | "report/s"
  | "cycles"
  | "%"
  | "V"
  | "mA"
  | "ohm"
  | "kohm"
  | "pF"
  | "V/us"
  | "hex"
  | "none";

export interface Measured {
  readonly value: number;
  readonly unit: Unit;
}

/** The bound that `measured` broke. A bound is met when it is reached. */
export interface Limit {
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly unit: Unit;
}

/** One replacement of text; `span.start === span.end` inserts. */
export interface Edit {
  readonly span: Span;
  readonly text: string;
}

/** A change that removes the fault; the edits of one fix never overlap. */
export interface Fix {
  /** Imperative and specific: "Hold the clock for 100 us". */
  readonly title: string;
  readonly edits: readonly Edit[];
}

/** A second place that explains the first: the other half of a conflict, the definition of a constant. */
export interface RelatedPlace {
  readonly span: Span;
  readonly message: string;
}

export interface Finding {
  /** `group/name`, one of the ids of the catalogue. */
  readonly rule: string;
  readonly severity: Severity;
  readonly span: Span;
  /** One sentence that says what is wrong and what would be right. */
  readonly message: string;
  readonly measured?: Measured;
  readonly limit?: Limit;
  /** Title and table of the document that the limit comes from. */
  readonly source?: string;
  readonly related: readonly RelatedPlace[];
  readonly fixes: readonly Fix[];
}

/** Something in the sources that could not be read; never an exception. */
export interface NotUnderstood {
  readonly span: Span;
  readonly message: string;
}
