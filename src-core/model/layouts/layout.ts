import type { Confidence, Source } from "../sources.ts";

export type LayoutName =
  | "two-button"
  | "middle-button"
  | "wheel"
  | "five-byte"
  | "ps2-standard"
  | "ps2-wheel"
  | "ps2-five-button";

export type MovementName = "x" | "y" | "wheel";
export type ButtonName = "left" | "right" | "middle" | "button4" | "button5";
/** What `encodes` and `decodes` notes may name. */
export type FieldName = MovementName | ButtonName;

/** Direction in which a movement field counts up. */
export type Direction = "right" | "up" | "down" | "towards the user";

/** A signed number that the report carries in two's complement. */
export interface MovementField {
  readonly name: MovementName;
  /** Width of one value in the report, sign included. */
  readonly bits: number;
  /** What one value may be when it is sent, in counts; a receiver accepts all that `bits` can hold. */
  readonly min: number;
  readonly max: number;
  /** Values in one report whose sum is the movement. */
  readonly parts: 1 | 2;
  readonly positive: Direction;
}

/** What one bit of a report carries. */
export type Slot =
  | { readonly kind: "constant"; readonly level: 0 | 1 }
  /** Sent as 0; receivers do not look at it. */
  | { readonly kind: "ignored" }
  | { readonly kind: "button"; readonly field: ButtonName; readonly activeLow: boolean }
  | {
      readonly kind: "movement";
      readonly field: MovementName;
      readonly part: 1 | 2;
      /** Bit of the field's value, 0 the lowest. */
      readonly fieldBit: number;
    }
  /** 1 when the movement did not fit. */
  | { readonly kind: "overflow"; readonly field: MovementName };

/**
 * What is written down about a layout. A row is a byte, its bits from the highest to the lowest: `0` and `1` are
 * constant, `-` is ignored, `left` is a button, `~left` an active-low one, `x7` bit 7 of x, `x7'` bit 7 of the
 * second x of the report, `x!` the overflow flag of x.
 */
export interface LayoutTable {
  readonly name: LayoutName;
  readonly title: string;
  readonly side: "serial" | "ps2";
  readonly rows: readonly string[];
  /** Index of the byte that is left out while it has nothing to say; undefined where all are always sent. */
  readonly optionalByte: number | undefined;
  readonly movements: readonly MovementField[];
  readonly meaning: string;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
  /** Where sources disagree, in a sentence that names them. */
  readonly disagreement: readonly { readonly note: string; readonly sources: readonly Source[] }[];
}

/** A layout with its rows taken apart. */
export interface ReportLayout extends LayoutTable {
  /** Data bits of a byte on the wire. */
  readonly dataBits: 7 | 8;
  /** Per byte, its slots from bit 0 upwards. */
  readonly bytes: readonly (readonly Slot[])[];
  /** In the order of notes: x y left right middle wheel button4 button5. */
  readonly fields: readonly FieldName[];
}
