import { encodeReport } from "../../model/layouts/encode.ts";
import type { ReportLayout } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { EncodesNote } from "../../notes/note.ts";
import { levelAt } from "../judge/evidence.ts";
import type { ReportFault, ReportTrial } from "../report-trial.ts";
import { Encoder } from "../subject/encoder.ts";
import { NotTried } from "../subject/not-tried.ts";
import { isMovement } from "../subject/operands.ts";
import { unitOf } from "../unit-of.ts";
import type { EditedFirmware } from "./mend-reports.ts";

/**
 * Whether the input that shows a fault of an encoder comes out right now where it was wrong: a short look before a long
 * trial. True where a look cannot tell.
 */
export function isMendedAt(
  { example, place, kind }: ReportFault,
  { note, layout, symbol }: ReportTrial,
  { program, notes }: EditedFirmware,
  cancelled: (() => boolean) | undefined,
): boolean {
  // Of a clipped movement only the limits are known, and of bits that are left over the report before.
  if (note.kind !== "encodes" || kind === "clip-missing") return true;
  const attached = notes.attached.find(
    (each) => each.note.kind === "encodes" && each.note.span.start === note.span.start,
  );
  const [first] = attached?.targets ?? [];
  if (attached?.note.kind !== "encodes" || first?.target.kind !== "function") return false;
  const declared = first.target.function;
  const now = program.definitionOf(declared) ?? declared;
  if (now.definition === undefined || now.name !== symbol.name) return false;
  try {
    const request = { program, unit: unitOf(program, now) ?? first.unit.typed, symbol: now, cancelled };
    const encoder = new Encoder(request, attached.note, layout);
    return [example.values, ...probes(attached.note, layout)].every((values) => {
      const sent = encoder.send(values);
      if (sent.kind === "stopped") return false;
      const right = encodeReport(layout, values);
      if (place === undefined || place.byte >= layout.bytes.length) return sent.bytes.length === right.length;
      // A byte that is left out while it has nothing to say may be sent all the same, and the other way round.
      if (right.length <= place.byte || sent.bytes.length <= place.byte) return true;
      return levelAt(sent.bytes, place) === levelAt(right, place);
    });
  } catch (problem) {
    if (problem instanceof NotTried) return false;
    throw problem;
  }
}

/** Nothing at all, each button alone, and the smallest movements both ways with every button down. */
function probes({ fields }: EncodesNote, layout: ReportLayout): readonly ReportValues[] {
  const named = layout.fields.filter((name) => fields.some(({ field }) => field.value === name));
  const buttons = named.filter((name) => !isMovement(name));
  const all = (step: number): ReportValues =>
    Object.fromEntries(named.map((name) => [name, isMovement(name) ? step : true]));
  return [{}, ...buttons.map((name): ReportValues => ({ [name]: true })), all(1), all(-1)];
}
