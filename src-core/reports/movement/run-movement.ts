import { bytesText } from "../../figures.ts";
import { encodeReport, encodeWholeReport } from "../../model/layouts/encode.ts";
import type { FieldName } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { DecodesNote, EncodesNote } from "../../notes/note.ts";
import type { Program } from "../../reader/program/program.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { ByteStore, Movement, MovementOutcome, MovementRun } from "../../trial-details.ts";
import type { ReportTrial } from "../report-trial.ts";
import { Decoder } from "../subject/decoder.ts";
import { Encoder } from "../subject/encoder.ts";
import { NotTried, stopped } from "../subject/not-tried.ts";
import { isMovement } from "../subject/operands.ts";
import type { ByteWritten } from "../subject/sink.ts";
import type { Request } from "../trial-request.ts";
import { bytesReturned } from "../try-encoder.ts";
import { unitOf } from "../unit-of.ts";
import { movementText, valuesOf } from "./in-layout.ts";
import { judgeBytes } from "./judge-movement.ts";

/** Runs one movement through a function that was tried; what its note does not name is left out. Never throws. */
export function runMovement(
  program: Program,
  trial: ReportTrial,
  movement: Movement,
  cancelled?: () => boolean,
): MovementRun {
  const { note, layout } = trial;
  const fields: readonly string[] = note.fields.map(({ field }) => field.value);
  const named = new Set(layout.fields.filter((field) => fields.includes(field)));
  const values = valuesOf(layout, named, movement);
  return {
    given: movementText(layout, values),
    outcome: outcomeOf(program, trial, values, named, cancelled),
  };
}

function outcomeOf(
  program: Program,
  trial: ReportTrial,
  values: ReportValues,
  named: ReadonlySet<FieldName>,
  cancelled: (() => boolean) | undefined,
): MovementOutcome {
  const { note, symbol, calls, notUnderstood } = trial;
  if (calls === 0) return { kind: "cannot", why: notUnderstood[0]?.message ?? "it could not be tried" };
  try {
    const unit = unitOf(program, symbol);
    if (unit === undefined) throw new NotTried("its body is not here", symbol.at);
    const request = { program, unit, symbol, cancelled };
    return note.kind === "encodes"
      ? encoded(request, note, trial, values)
      : decoded(request, note, trial, values, named);
  } catch (problem) {
    const why = problem instanceof Error ? problem.message : String(problem);
    return { kind: "cannot", why: `could not be tried: ${why}` };
  }
}

function encoded(
  request: Request,
  note: EncodesNote,
  { layout, faults, returnsLength }: ReportTrial,
  values: ReportValues,
): MovementOutcome {
  const sent = new Encoder(request, note, layout).send(values);
  if (sent.kind === "stopped") throw stopped(sent.stop, undefined, sent.asked);
  const bytes = returnsLength ? bytesReturned(sent.bytes, sent.returned) : sent.bytes;
  return {
    kind: "ran",
    came: bytes.length === 0 ? "no bytes" : bytesText(bytes),
    judgement: judgeBytes(layout, values, bytes, faults),
    right: bytesText(encodeReport(layout, values)),
    stores: sent.written.map(storeOf),
  };
}

function storeOf({ byte, value, at }: ByteWritten): ByteStore {
  if (at === undefined) return { byte, value, span: undefined };
  const { file, start, end } = visibleRange(at.first, at.last);
  return { byte, value, span: { file, start, end } };
}

function decoded(
  request: Request,
  note: DecodesNote,
  { layout }: ReportTrial,
  values: ReportValues,
  named: ReadonlySet<FieldName>,
): MovementOutcome {
  const taken = new Decoder(request, note, layout).takeApart(encodeWholeReport(layout, values));
  if (taken.kind === "stopped") throw stopped(taken.stop, undefined, taken.asked);
  const came: ReportValues = Object.fromEntries(
    [...taken.values].map(([field, value]) => [field, isMovement(field) ? value : value !== 0]),
  );
  const isRight = [...named].every((field) => Number(came[field] ?? 0) === Number(values[field] ?? 0));
  return {
    kind: "ran",
    came: movementText(layout, came),
    judgement: isRight ? "right" : "wrong",
    right: movementText(layout, values),
    stores: [],
  };
}
