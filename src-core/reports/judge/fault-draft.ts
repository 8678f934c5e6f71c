import type { FieldName } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { FaultKind } from "../report-trial.ts";

/** A fault before anyone looked where in the source it comes from. */
export interface FaultDraft {
  readonly kind: FaultKind;
  readonly fields: readonly FieldName[];
  readonly what: string;
  /** The smallest input that shows it. */
  readonly values: ReportValues;
  /** The report before, where it takes two to show it. */
  readonly before?: ReportValues;
  /** The bit that is wrong; undefined where the fault is in no bit. */
  readonly place: BitPlace | undefined;
  /** The field whose operand is to blame; undefined where the whole byte is. */
  readonly driver: FieldName | undefined;
}

export interface BitPlace {
  /** Index of the byte. */
  readonly byte: number;
  /** 0 is the lowest. */
  readonly bit: number;
}
