import type { LineValuesResult, ValuedLine } from "../line-values.ts";
import { visibleRange } from "../reader/tokens.ts";
import { functionName, isSameFunction } from "../reports/tried-report.ts";
import type { ByteStore, FunctionName } from "../trial-details.ts";
import type { ProjectReading } from "./project-reading.ts";
import type { TrialResult } from "./service.ts";

/** What each line of an encoder stored in the report, as the last trial of these texts showed. */
export function lineValuesOf(
  { facts, files }: ProjectReading,
  subject: FunctionName,
  tried: TrialResult | undefined,
): LineValuesResult {
  const found = tried?.reports.find((each) => isSameFunction(each.subject, subject));
  const symbol = facts.program.functions.find((each) => isSameFunction(functionName(each), subject));
  const lexed = files.get(subject.file);
  if (found === undefined || symbol?.definition === undefined || lexed === undefined)
    return { kind: "cannot", message: `\`${subject.name}\` was not run with the text as it is now` };
  const { movement, layout } = found;
  const { outcome } = movement;
  if (outcome.kind === "cannot") return { kind: "cannot", message: outcome.why };
  const { first, last } = symbol.declarationAt;
  const whole = visibleRange(first, last);
  const firstLine = lineAt(lexed.text, whole.start);
  const texts = lexed.text.split("\n").slice(firstLine, lineAt(lexed.text, whole.end) + 1);
  const lineOf = ({ span }: ByteStore): number | undefined =>
    span?.file === subject.file && span.start >= whole.start && span.end <= whole.end
      ? lineAt(lexed.text, span.start) - firstLine
      : undefined;
  const lines = texts.map(
    (text, index): ValuedLine => ({
      number: firstLine + index + 1,
      text: text.replace(/\r$/, ""),
      stored: outcome.stores.filter((store) => lineOf(store) === index).map(storedByte),
    }),
  );
  const elsewhere = outcome.stores
    .filter((store) => lineOf(store) === undefined)
    .map((store) => ({ ...storedByte(store), place: placeText(store, files) }));
  return { kind: "lines", values: { name: symbol.name, layout, movement, lines, elsewhere } };
}

function storedByte({ byte, value }: ByteStore): { readonly byte: number; readonly value: number } {
  return { byte, value };
}

function placeText({ span }: ByteStore, files: ProjectReading["files"]): string {
  const text = span === undefined ? undefined : files.get(span.file)?.text;
  if (span === undefined || text === undefined) return "a place that is not known";
  return `line ${lineAt(text, span.start) + 1} of ${span.file.slice(span.file.lastIndexOf("/") + 1)}`;
}

/** From 0. */
function lineAt(text: string, offset: number): number {
  return text.slice(0, offset).split("\n").length - 1;
}
