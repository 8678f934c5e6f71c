import { bytesText } from "../figures.ts";
import { encodeWholeReport } from "../model/layouts/encode.ts";
import type { FieldName, ReportLayout } from "../model/layouts/layout.ts";
import { movementRange, type ReportValues } from "../model/layouts/values.ts";
import type { DecodesNote } from "../notes/note.ts";
import { type Axis, buttonSets, mixtures, sweep } from "./inputs/samples.ts";
import type { FaultDraft } from "./judge/fault-draft.ts";
import { type Decoded, judgeDecoder } from "./judge/judge-decoder.ts";
import type { ReportFault } from "./report-trial.ts";
import { Decoder, type TakenApart } from "./subject/decoder.ts";
import { stopped } from "./subject/not-tried.ts";
import { isMovement } from "./subject/operands.ts";
import type { Request, Tried } from "./trial-request.ts";

/** Hands a decoder every kind of report and judges what comes out. Throws `NotTried` where it cannot be run. */
export function tryDecoder(request: Request, note: DecodesNote, layout: ReportLayout): Tried {
  const decoder = new Decoder(request, note, layout);
  const named = new Set(decoder.operands.map(({ field }) => field));
  // Fields that the note leaves out are in the report all the same.
  const axes = layout.movements.map((field): Axis => {
    const { min, max } = movementRange(field);
    return { field, values: Array.from({ length: max - min + 1 }, (_, index) => min + index) };
  });
  const buttons = layout.fields.flatMap((field) => (isMovement(field) ? [] : [field]));
  const inputs = [...buttonSets(buttons), ...axes.flatMap(sweep), ...mixtures(axes, buttons)];
  const decoded = inputs.map((values): Decoded => ({ values, came: taken(decoder, layout, values).values }));
  const drafts = judgeDecoder(
    layout,
    axes.filter(({ field }) => named.has(field.name)),
    buttons.filter((field) => named.has(field)),
    decoded,
  );
  const faults = drafts.map((draft) => faultOf(draft, request, layout, decoder));
  return { found: [], faults, returnsLength: false, met: decoder.missteps, calls: inputs.length };
}

function taken(
  decoder: Decoder,
  layout: ReportLayout,
  values: ReportValues,
): Extract<TakenApart, { kind: "taken" }> {
  const result = decoder.takeApart(encodeWholeReport(layout, values));
  if (result.kind === "stopped") throw stopped(result.stop, undefined, result.asked);
  return result;
}

function faultOf(
  { kind, fields, what, values }: FaultDraft,
  { symbol }: Request,
  layout: ReportLayout,
  decoder: Decoder,
): ReportFault {
  const came = taken(decoder, layout, values);
  const [field] = fields;
  return {
    kind,
    fields,
    what,
    example: {
      values,
      given: bytesText(encodeWholeReport(layout, values)),
      came: fields.map((each) => fieldText(each, came.values.get(each) ?? 0)).join(", "),
      right: fields.map((each) => fieldText(each, Number(values[each] ?? 0))).join(", "),
    },
    place: undefined,
    at: (field === undefined ? undefined : came.writers.get(field)) ?? symbol.at,
    fixes: [],
  };
}

function fieldText(field: FieldName, value: number): string {
  if (isMovement(field)) return `${field}=${value}`;
  return `${field} ${value === 0 ? "up" : "down"}`;
}
