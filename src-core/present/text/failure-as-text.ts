import type { Failure } from "../../bench/verdicts/verdict.ts";
import type { SimulatedRun } from "../../simulation-result.ts";
import type { FileLines } from "../line-index.ts";
import { limitInWords, measuredInWords } from "../quantity.ts";
import { milliseconds } from "../run-figures.ts";
import { markedLine } from "./marked-line.ts";
import type { Paint } from "./paint.ts";

const indent = "      ";

/** A fault of a run, with the line of code. `run` says which run it was; `more` are labels of their own, with texts. */
export function failureAsText(
  failure: Failure,
  lines: FileLines,
  paint: Paint,
  run: string,
  more: readonly (readonly [label: string, text: string])[] = [],
): string {
  const { span, message, rule, measured, limit, source, time, times } = failure;
  const place = span === undefined ? "the whole run" : placeOf(span, lines);
  const often = times > 1 ? ` (${times} times)` : "";
  const head = `  ${paint("place", place)}  ${paint("error", "fault")}: ${message}${often}  ${paint("label", `[${rule}]`)}`;
  const bound = limit === undefined ? undefined : limitInWords(limit);
  const details = detailsAsText(
    [
      ["first", `at ${milliseconds(time)} of ${run}`],
      ...(measured === undefined ? [] : [["found", measuredInWords(measured)] as const]),
      ...(bound === undefined ? [] : [["limit", bound] as const]),
      ...(source === undefined ? [] : [["source", source] as const]),
      ...more,
    ],
    paint,
  );
  return [
    head,
    ...(span === undefined ? [] : markedLine(span, lines.of(span.file), paint, indent)),
    ...details,
  ].join("\n");
}

/** Why the code went no further. */
export function stopAsText(
  { message, span }: NonNullable<SimulatedRun["stopped"]>,
  lines: FileLines,
  paint: Paint,
): string {
  const place = span === undefined ? "" : ` (${placeOf(span, lines)})`;
  return `  ${paint("error", "error")}: the code stopped: ${message}${place}`;
}

/** Indented below what they belong to. */
export function detailsAsText(
  details: readonly (readonly [label: string, text: string])[],
  paint: Paint,
): readonly string[] {
  return details.map(([label, text]) => `${indent}${paint("label", label.padEnd(7))} ${text}`);
}

function placeOf(span: { readonly file: string; readonly start: number }, lines: FileLines): string {
  const { line, column } = lines.of(span.file).placeOf(span.start);
  return `${span.file}:${line}:${column}`;
}
