import type { NotUnderstood, Span } from "../finding.ts";
import { layoutNamed } from "../model/report-layouts.ts";
import type { NoteFacts } from "../notes/note-facts.ts";
import type { Program } from "../reader/program/program.ts";
import { visibleRange } from "../reader/tokens.ts";
import type { At, FunctionSymbol, TypedUnit } from "../reader/typed/nodes.ts";
import type { ReportTrial } from "./report-trial.ts";
import { NotTried } from "./subject/not-tried.ts";
import type { Request } from "./trial-request.ts";
import { tryDecoder } from "./try-decoder.ts";
import { tryEncoder } from "./try-encoder.ts";
import { unitOf } from "./unit-of.ts";

/**
 * Runs every function that a note calls an encoder or a decoder over its inputs; not those whose notes are themselves
 * at fault. Never throws; undefined when cancelled.
 */
export function tryReports(
  program: Program,
  { attached, problems }: NoteFacts,
  cancelled?: () => boolean,
): readonly ReportTrial[] | undefined {
  const trials: ReportTrial[] = [];
  for (const { note, targets } of attached) {
    if (note.kind !== "encodes" && note.kind !== "decodes") continue;
    // What follows from a note that contradicts the code or itself would only repeat that.
    if (problems.some(({ rule, span }) => rule === "note/mismatch" && liesIn(span, note.span))) continue;
    const layout = layoutNamed(note.layout.value);
    const [first] = targets;
    if (layout === undefined || first?.target.kind !== "function") continue;
    const declared = first.target.function;
    const trial = { note, symbol: program.definitionOf(declared) ?? declared, layout };
    try {
      const request = requestFor(program, trial.symbol, first.unit.typed, cancelled);
      const { met, ...tried } =
        note.kind === "encodes" ? tryEncoder(request, note, layout) : tryDecoder(request, note, layout);
      const notUnderstood = met.map(({ message, at }) =>
        said(at, `while \`${declared.name}\` was tried: ${message}`),
      );
      trials.push({ ...trial, ...tried, notUnderstood });
    } catch (problem) {
      if (problem instanceof NotTried && problem.cancelled) return undefined;
      const why = problem instanceof Error ? problem.message : String(problem);
      const at = (problem instanceof NotTried ? problem.at : undefined) ?? declared.at;
      const notUnderstood = [said(at, `\`${declared.name}\` could not be tried: ${why}`)];
      trials.push({ ...trial, found: [], faults: [], returnsLength: false, notUnderstood, calls: 0 });
    }
  }
  return trials;
}

function requestFor(
  program: Program,
  symbol: FunctionSymbol,
  unit: TypedUnit,
  cancelled: (() => boolean) | undefined,
): Request {
  if (symbol.definition === undefined) throw new NotTried("it is declared and has no body here", symbol.at);
  return { program, unit: unitOf(program, symbol) ?? unit, symbol, cancelled };
}

function said({ first, last }: At, message: string): NotUnderstood {
  const { file, start, end }: Span = visibleRange(first, last);
  return { span: { file, start, end }, message };
}

function liesIn(inner: Span, outer: Span): boolean {
  return inner.file === outer.file && inner.start >= outer.start && inner.end <= outer.end;
}
