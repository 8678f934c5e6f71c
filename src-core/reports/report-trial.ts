import type { Fix, NotUnderstood } from "../finding.ts";
import type { ButtonName, FieldName, MovementName, ReportLayout } from "../model/layouts/layout.ts";
import type { ReportValues } from "../model/layouts/values.ts";
import type { DecodesNote, EncodesNote } from "../notes/note.ts";
import type { At, FunctionSymbol } from "../reader/typed/nodes.ts";
import type { BitPlace } from "./judge/fault-draft.ts";

/** What came of running one of the author's encoders or decoders over its inputs. Plain data but for places. */
export interface ReportTrial {
  readonly note: EncodesNote | DecodesNote;
  readonly symbol: FunctionSymbol;
  readonly layout: ReportLayout;
  /** What drives each bit of each byte that an encoder makes, from bit 0 upwards; empty for decoders. */
  readonly found: readonly (readonly FoundSlot[])[];
  readonly faults: readonly ReportFault[];
  /** What an encoder returns is the number of its bytes; bytes beyond it are not sent. */
  readonly returnsLength: boolean;
  /** Why it could not be run, or not to the end; and undefined behaviour that was met on the way. */
  readonly notUnderstood: readonly NotUnderstood[];
  /** Calls of the function; 0 where it could not be run to the end. */
  readonly calls: number;
}

/** What one bit of a report follows. */
export type FoundSlot =
  | { readonly kind: "constant"; readonly level: 0 | 1 }
  | { readonly kind: "button"; readonly field: ButtonName; readonly activeLow: boolean }
  | {
      readonly kind: "movement";
      readonly field: MovementName;
      /** Bit of the value, 0 the lowest. */
      readonly fieldBit: number;
      /** The value's opposite is what counts. */
      readonly opposite: boolean;
      /** The bit is turned over. */
      readonly inverted: boolean;
    }
  /** Nothing as simple as that: what it depends on. */
  | { readonly kind: "mixed"; readonly fields: readonly FieldName[] };

export type FaultKind =
  | "layout"
  | "sync-bit"
  | "y-direction"
  | "sign-lost"
  | "clip-missing"
  | "button-map"
  | "length";

export interface ReportFault {
  readonly kind: FaultKind;
  /** Fields that come out wrong; empty where the fault is of the report as a whole. */
  readonly fields: readonly FieldName[];
  /** What is wrong, without the example: "bit 6 of byte 2 has to be 0". */
  readonly what: string;
  /** The smallest input that shows it. */
  readonly example: Example;
  /** The bit that is wrong; undefined where the fault is in no bit of a report. */
  readonly place: BitPlace | undefined;
  /** The expression to blame. */
  readonly at: At;
  /** Changes that were tried out and mend it. */
  readonly fixes: readonly Fix[];
}

export interface Example {
  /** In the layout's sense. */
  readonly values: ReportValues;
  /** The input as the function takes it: `dx=-1 left=1`, or the bytes of a decoder's report. */
  readonly given: string;
  /** What came out: the bytes of an encoder, the fields of a decoder. */
  readonly came: string;
  /** What would be right. */
  readonly right: string;
}
