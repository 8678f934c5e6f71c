import type { Example } from "../../../../src-core/checks/rule.ts";
import type { FieldName, ReportLayout } from "../../../../src-core/model/layouts/layout.ts";
import type { ReportValues } from "../../../../src-core/model/layouts/values.ts";
import { layoutNamed } from "../../../../src-core/model/report-layouts.ts";
import { Encoder } from "../../../../src-core/reports/subject/encoder.ts";
import { factsOf } from "../../../src-core/checks/harness.ts";

/** An encoder as the interpreter runs it. */
export interface InterpretedEncoder {
  /** The fields of its note, and bits of the place that each is given in. */
  readonly fields: ReadonlyMap<FieldName, number>;
  /** Bytes of the report of these values, as many as leave on the line. */
  report(values: ReportValues): readonly number[];
}

/** The function of an example that has an `encodes` note. */
export function interpretedEncoder(example: Example): InterpretedEncoder {
  const { program, notes } = factsOf(example);
  for (const { note, targets } of notes.attached) {
    const [first] = targets;
    if (note.kind !== "encodes" || first?.target.kind !== "function") continue;
    const layout = layoutNamed(note.layout.value);
    const symbol = program.definitionOf(first.target.function) ?? first.target.function;
    if (layout === undefined) continue;
    const encoder = new Encoder(
      { program, unit: first.unit.typed, symbol, cancelled: undefined },
      note,
      layout,
    );
    return {
      fields: new Map(encoder.operands.map(({ field, shape }) => [field, shape.bits])),
      report: (values) => sentBy(encoder, layout, values),
    };
  }
  throw new Error("the example has no encoder");
}

function sentBy(encoder: Encoder, layout: ReportLayout, values: ReportValues): readonly number[] {
  const sent = encoder.send(values);
  if (sent.kind === "stopped") throw new Error(sent.stop.message);
  const { bytes, returned } = sent;
  const isCount = returned !== undefined && returned > 1 && returned <= bytes.length;
  // A line of seven data bits carries no eighth.
  return (isCount ? bytes.slice(0, returned) : bytes).map((byte) => byte & (2 ** layout.dataBits - 1));
}
