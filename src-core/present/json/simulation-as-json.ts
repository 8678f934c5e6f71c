import type { RunInBrief } from "../../matrix-result.ts";
import { hasPassed, type SimulatedRun } from "../../simulation-result.ts";
import type { FileLines } from "../line-index.ts";
import { jsonSpan } from "./json-span.ts";
import { jsonText } from "./json-text.ts";

/** Version of the shape below; it rises when a reader of an older shape would go wrong. */
const shapeVersion = 1;

/**
 * Runs as one JSON document, ended by a line feed. Times are picoseconds since power-up; lines and columns count from 1. What
 * `details` of a run holds is documented with `RunDetails`; its places have their lines, too.
 */
export function simulationsAsJson(
  runs: readonly { readonly project: string; readonly run: SimulatedRun }[],
  lines: FileLines,
): string {
  const document = {
    version: shapeVersion,
    runs: runs.map(({ project, run }) => jsonRun(project, run, lines)),
  };
  return `${jsonText(document)}\n`;
}

function jsonRun(project: string, run: SimulatedRun, lines: FileLines): object {
  return {
    project,
    stroke: run.stroke.name,
    mouse: run.mouse.name,
    pc: run.pc.name,
    layout: run.layout,
    seed: run.seed,
    ...jsonOutcome(run, lines),
    figures: run.verdict.figures,
    sent: run.sent,
    received: run.received,
    details: { ...run.details, places: run.details.places.map((span) => jsonSpan(span, lines)) },
  };
}

/** What became of a run, without its figures. */
export function jsonOutcome(run: RunInBrief, lines: FileLines): object {
  const { verdict, stopped } = run;
  return {
    passed: hasPassed(run),
    ended: run.ended,
    strokeBegan: run.strokeBegan,
    ...(stopped === undefined
      ? {}
      : {
          stopped: {
            message: stopped.message,
            ...(stopped.span === undefined ? {} : jsonSpan(stopped.span, lines)),
          },
        }),
    notSimulated: run.notSimulated,
    failures: verdict.failures.map(({ span, ...failure }) => ({
      ...failure,
      ...(span === undefined ? {} : jsonSpan(span, lines)),
    })),
  };
}
