import { ms, second, type Time } from "../../bench/time/time.ts";
import type { Failure, RunFigures } from "../../bench/verdicts/verdict.ts";
import type { SimulatedRun } from "../../simulation-result.ts";
import type { FileLines } from "../line-index.ts";
import { limitInWords, measuredInWords } from "../quantity.ts";
import { markedLine } from "./marked-line.ts";
import type { Paint } from "./paint.ts";
import { pathPicture } from "./path-picture.ts";

const indent = "      ";

/** One run for a reader at a terminal: what it was run with, what came of it, the two paths, and what went wrong. */
export function simulationAsText(project: string, run: SimulatedRun, lines: FileLines, paint: Paint): string {
  const { verdict, stopped, strokeBegan, notSimulated } = run;
  const parts = [heading(project, run, paint), figuresAsText(run)];
  if (strokeBegan)
    parts.push(
      pathPicture(run.sent, run.received)
        .map((line) => `  ${line}`)
        .join("\n"),
    );
  if (stopped !== undefined) {
    const place = stopped.span === undefined ? "" : ` (${placeOf(stopped.span, lines)})`;
    parts.push(`  ${paint("error", "error")}: the code stopped: ${stopped.message}${place}`);
  }
  for (const failure of verdict.failures) parts.push(failureAsText(failure, lines, paint));
  if (notSimulated.length > 0) parts.push(`  not simulated: ${notSimulated.join(", ")}`);
  parts.push(summary(run, paint));
  return `${parts.join("\n\n")}\n`;
}

/** Whether the firmware did all that it should. */
export function hasPassed({ verdict, stopped, strokeBegan }: SimulatedRun): boolean {
  return verdict.failures.length === 0 && stopped === undefined && strokeBegan;
}

function heading(project: string, { stroke, mouse, pc, seed, ended }: SimulatedRun, paint: Paint): string {
  const what = [
    ["stroke", stroke.name, stroke.title],
    ["mouse", mouse.name, mouse.title],
    ["PC", pc.name, pc.title],
  ].map(([kind = "", name = "", title = ""]) => `  ${paint("label", kind.padEnd(7))} ${name}: ${title}`);
  return [
    paint("file", project),
    ...what,
    `  ${paint("label", "seed".padEnd(7))} ${seed}; ${(ended / second).toFixed(2)} s of virtual time`,
  ].join("\n");
}

function figuresAsText({ verdict: { figures }, strokeBegan }: SimulatedRun): string {
  const rows = [
    ...identified(figures),
    ...(figures.counts ?? []).map((axis) => [axis.axis, `${axis.in} counts in, ${axis.out} out`]),
    ...(figures.clicks === undefined
      ? []
      : [["buttons", `${figures.clicks.in} changes in, ${figures.clicks.out} out`]]),
    ...(figures.delay === undefined
      ? []
      : [
          [
            "delay",
            `median ${milliseconds(figures.delay.median)}, worst ${milliseconds(figures.delay.worst)}`,
          ],
        ]),
    ...(strokeBegan ? [] : [["stroke", "never began: mouse and PC were not both ready"]]),
  ];
  return rows.map(([label = "", text = ""]) => `  ${label.padEnd(15)} ${text}`).join("\n");
}

function identified({ identifications }: RunFigures): readonly string[][] {
  return identifications.map(({ outcome, bytes, delay }) => {
    const sent = bytes.length === 0 ? "" : `: ${bytes.map(hex).join(" ")}`;
    const after = delay === undefined ? "" : ` after ${milliseconds(delay)}`;
    return ["identification", `${outcome}${sent}${after}`];
  });
}

function hex(byte: number): string {
  return byte.toString(16).toUpperCase().padStart(2, "0");
}

function milliseconds(time: Time): string {
  return `${(time / ms).toFixed(1)} ms`;
}

function failureAsText(failure: Failure, lines: FileLines, paint: Paint): string {
  const { span, message, rule, measured, limit, source, time, times } = failure;
  const place = span === undefined ? `at ${milliseconds(time)}` : placeOf(span, lines);
  const often = times > 1 ? ` (${times} times)` : "";
  const head = `  ${paint("place", place)}  ${paint("error", "fault")}: ${message}${often}  ${paint("label", `[${rule}]`)}`;
  const details: [string, string][] = [];
  if (span !== undefined) details.push(["first", `at ${milliseconds(time)} of the run`]);
  if (measured !== undefined) details.push(["found", measuredInWords(measured)]);
  const bound = limit === undefined ? undefined : limitInWords(limit);
  if (bound !== undefined) details.push(["limit", bound]);
  if (source !== undefined) details.push(["source", source]);
  return [
    head,
    ...(span === undefined ? [] : markedLine(span, lines.of(span.file), paint, indent)),
    ...details.map(([label, text]) => `${indent}${paint("label", label.padEnd(7))} ${text}`),
  ].join("\n");
}

function placeOf(span: { readonly file: string; readonly start: number }, lines: FileLines): string {
  const { line, column } = lines.of(span.file).placeOf(span.start);
  return `${span.file}:${line}:${column}`;
}

function summary(run: SimulatedRun, paint: Paint): string {
  if (hasPassed(run)) return paint("good", "passed");
  const count = run.verdict.failures.length;
  return paint("error", `failed${count === 0 ? "" : `: ${count === 1 ? "1 fault" : `${count} faults`}`}`);
}
