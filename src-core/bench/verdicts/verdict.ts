import type { Limit, Measured, Span, Unit } from "../../finding.ts";
import type { MovementName } from "../../model/layouts/layout.ts";
import type { Answer } from "../pcs/pc-record.ts";
import type { Time } from "../time/time.ts";

/** What is to be said of one run. Plain data. */
export interface Verdict {
  /** Empty for a run without fault; in order of time. */
  readonly failures: readonly Failure[];
  readonly figures: RunFigures;
}

/** Something wrong in a run, by the rule of the catalogue that it belongs to. */
export interface Failure {
  readonly rule: string;
  /** One sentence that says what is wrong and what would be right. */
  readonly message: string;
  readonly measured: Measured | undefined;
  readonly limit: Limit | undefined;
  /** Title and place of the document that the limit comes from. */
  readonly source: string | undefined;
  /** When it was seen for the first time. */
  readonly time: Time;
  /** The code that caused it; undefined where no edge tells. */
  readonly span: Span | undefined;
  /** How often it was seen; the worst is told. */
  readonly times: number;
}

export interface RunFigures {
  /** Per axis that the serial layout has. Undefined where no session was. */
  readonly counts: readonly AxisCounts[] | undefined;
  /** Buttons that went down or up, among those that the layout has. */
  readonly clicks: { readonly in: number; readonly out: number } | undefined;
  /** From an incoming report to the end of the report that carried it; undefined where none was carried. */
  readonly delay: { readonly median: Time; readonly worst: Time } | undefined;
  readonly identifications: readonly Identified[];
  /** Every quantity of the model that was measured, by its id. */
  readonly measured: readonly MeasuredQuantity[];
  readonly bytes: {
    readonly received: number;
    readonly framingErrors: number;
    /** Thrown away to find the beginning of a report. */
    readonly discarded: number;
  };
  /** How long the firmware held the PS/2 clock low in all, and at a time. */
  readonly held: { readonly total: Time; readonly longest: Time };
}

/** In the sense of PS/2: y upwards. */
export interface AxisCounts {
  readonly axis: MovementName;
  readonly in: number;
  readonly out: number;
}

export interface Identified {
  readonly asked: Time;
  readonly outcome: Answer["outcome"];
  readonly bytes: readonly number[];
  /** From RTS to the first byte's end; undefined where none came. */
  readonly delay: Time | undefined;
}

export interface MeasuredQuantity {
  readonly id: string;
  readonly unit: Unit;
  readonly least: number;
  readonly most: number;
  readonly count: number;
}
