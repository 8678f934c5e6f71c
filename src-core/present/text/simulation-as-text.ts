import { second } from "../../bench/time/time.ts";
import { hasPassed, type SimulatedRun } from "../../simulation-result.ts";
import type { FileLines } from "../line-index.ts";
import { figureRows } from "../run-figures.ts";
import { failureAsText, stopAsText } from "./failure-as-text.ts";
import type { Paint } from "./paint.ts";
import { pathPicture } from "./path-picture.ts";

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
  if (stopped !== undefined) parts.push(stopAsText(stopped, lines, paint));
  for (const failure of verdict.failures) parts.push(failureAsText(failure, lines, paint, "the run"));
  if (notSimulated.length > 0) parts.push(`  not simulated: ${notSimulated.join(", ")}`);
  parts.push(summary(run, paint));
  return `${parts.join("\n\n")}\n`;
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

function figuresAsText(run: SimulatedRun): string {
  return figureRows(run)
    .map(([label, text]) => `  ${label.padEnd(15)} ${text}`)
    .join("\n");
}

function summary(run: SimulatedRun, paint: Paint): string {
  if (hasPassed(run)) return paint("good", "passed");
  const count = run.verdict.failures.length;
  return paint("error", `failed${count === 0 ? "" : `: ${count === 1 ? "1 fault" : `${count} faults`}`}`);
}
