import { decodeReport, fieldsOf } from "../../model/layouts/decode.ts";
import { encodeReport, encodeWholeReport } from "../../model/layouts/encode.ts";
import type { FieldName, ReportLayout } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { MovementOutcome } from "../../trial-details.ts";
import { saying } from "../judge/evidence.ts";
import { leastReach } from "../judge/movements.ts";
import type { ReportFault } from "../report-trial.ts";
import { isMovement } from "../subject/operands.ts";

type Judgement = Extract<MovementOutcome, { kind: "ran" }>["judgement"];

/**
 * Whether the bytes of an encoder say what went in, by what the trial over all its inputs takes as right: what is beyond what it
 * has to let through may come out otherwise where no fault of that field was found.
 */
export function judgeBytes(
  layout: ReportLayout,
  values: ReportValues,
  bytes: readonly number[],
  faults: readonly ReportFault[],
): Judgement {
  const wanted = encodeReport(layout, values);
  if (bytes.length === 0 && saying(values).length === 0) return "allowed";
  if (bytes.length !== wanted.length && bytes.length !== layout.bytes.length) return "wrong";
  const read = decodeReport(layout, bytes);
  if (read.kind !== "report") return "wrong";
  const right = fieldsOf(layout, encodeWholeReport(layout, values)).values;
  const differing = layout.fields.filter(
    (field) => Number(read.values[field] ?? 0) !== Number(right[field] ?? 0),
  );
  if (differing.length === 0) return "right";
  const mayDiffer = (field: FieldName): boolean =>
    isMovement(field) &&
    Math.abs(values[field] ?? 0) > leastReach &&
    !faults.some(({ fields }) => fields.includes(field));
  return differing.every(mayDiffer) ? "allowed" : "wrong";
}
