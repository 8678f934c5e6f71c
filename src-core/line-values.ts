import type { MovementRun } from "./trial-details.ts";

/** The lines of an encoder and what each stored in the report, for one movement: plain data. */
export interface LineValues {
  readonly name: string;
  /** Id of the layout. */
  readonly layout: string;
  readonly movement: MovementRun;
  readonly lines: readonly ValuedLine[];
  /** Stores of other functions, where the report was built there. */
  readonly elsewhere: readonly (StoredByte & { readonly place: string })[];
}

export interface ValuedLine {
  /** From 1, in the file. */
  readonly number: number;
  readonly text: string;
  /** In the order in which they were stored. */
  readonly stored: readonly StoredByte[];
}

export interface StoredByte {
  /** From 0. */
  readonly byte: number;
  readonly value: number;
}

export type LineValuesResult =
  | { readonly kind: "lines"; readonly values: LineValues }
  /** In one sentence. */
  | { readonly kind: "cannot"; readonly message: string };
