import { encodeReport } from "../../model/layouts/encode.ts";
import { levelAt } from "../judge/evidence.ts";
import type { ReportFault, ReportTrial } from "../report-trial.ts";
import { Encoder } from "../subject/encoder.ts";
import { NotTried } from "../subject/not-tried.ts";
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
    const sent = new Encoder(request, attached.note, layout).send(example.values);
    if (sent.kind === "stopped") return false;
    const right = encodeReport(layout, example.values);
    if (place === undefined || place.byte >= layout.bytes.length) return sent.bytes.length === right.length;
    return sent.bytes.length > place.byte && levelAt(sent.bytes, place) === levelAt(right, place);
  } catch (problem) {
    if (problem instanceof NotTried) return false;
    throw problem;
  }
}
