import { second } from "../../bench/time/time.ts";
import type { MatrixCell, MatrixResult, StrokeOutcome } from "../../matrix-result.ts";
import { type Trouble, troubleOf } from "../../matrix-verdict.ts";
import type { FileLines } from "../line-index.ts";
import { limitInWords, measuredInWords } from "../quantity.ts";
import { attributes, textOf } from "./xml.ts";

/**
 * Matrices as JUnit XML: a suite per firmware, a case per cell and stroke. There is no standard of it; elements and
 * attributes are those that the schema known as junit-10.xsd requires and allows (from memory): `testsuites` of
 * `testsuite` with name, tests, failures and errors; `testcase` with name, classname and time; in it `failure` for what
 * was judged wrong, or `error` for what could not be run, with type and message. A class name's parts are divided by a
 * dot, by which readers make groups: the mouse, then the PC. `time` is the length of the run in virtual seconds, so that
 * the same seed gives the same document.
 */
export function matricesAsJUnit(
  matrices: readonly { readonly project: string; readonly result: MatrixResult }[],
  lines: FileLines,
): string {
  const suites = matrices.map(({ project, result }) => suite(project, result, lines));
  return ['<?xml version="1.0" encoding="UTF-8"?>', "<testsuites>", ...suites, "</testsuites>", ""].join(
    "\n",
  );
}

function suite(project: string, { cells }: MatrixResult, lines: FileLines): string {
  const outcomes = cells.flatMap((cell) => cell.outcomes);
  const kinds = outcomes.map((outcome) => troubleOf(outcome)?.kind);
  const errors = kinds.filter((kind) => kind === "cannot").length;
  const failures = kinds.filter((kind) => kind !== undefined).length - errors;
  const time = seconds(outcomes.reduce((sum, outcome) => sum + lengthOf(outcome), 0));
  const head = attributes({ name: project, tests: outcomes.length, failures, errors, time });
  const cases = cells.flatMap((cell) => cell.outcomes.map((outcome) => testCase(cell, outcome, lines)));
  return [`  <testsuite ${head}>`, ...cases, "  </testsuite>"].join("\n");
}

function testCase({ mouse, pc }: MatrixCell, outcome: StrokeOutcome, lines: FileLines): string {
  const trouble = troubleOf(outcome);
  const time = seconds(lengthOf(outcome));
  const head = attributes({ classname: `${mouse}.${pc}`, name: outcome.stroke, time });
  if (trouble === undefined) return `    <testcase ${head}/>`;
  const { element, type, message, details } = inJUnit(trouble, lines);
  return [
    `    <testcase ${head}>`,
    `      <${element} ${attributes({ type, message })}>${textOf(details.join("\n"))}</${element}>`,
    "    </testcase>",
  ].join("\n");
}

interface InJUnit {
  readonly element: "failure" | "error";
  readonly type: string;
  readonly message: string;
  readonly details: readonly string[];
}

function inJUnit(trouble: Trouble, lines: FileLines): InJUnit {
  switch (trouble.kind) {
    case "failure": {
      const { rule, message, span, time, measured, limit, source } = trouble.failure;
      const bound = limit === undefined ? undefined : limitInWords(limit);
      const details = [
        ...placed(span, lines),
        `first at ${seconds(time)} s`,
        ...(measured === undefined ? [] : [`found ${measuredInWords(measured)}`]),
        ...(bound === undefined ? [] : [`limit ${bound}`]),
        ...(source === undefined ? [] : [`source ${source}`]),
      ];
      return { element: "failure", type: rule, message, details };
    }
    case "stopped": {
      const message = `the code stopped: ${trouble.message}`;
      return { element: "failure", type: "stopped", message, details: placed(trouble.span, lines) };
    }
    case "never-began": {
      const message = "the stroke never began: mouse and PC were not both ready";
      return { element: "failure", type: "never-began", message, details: [] };
    }
    case "cannot":
      return { element: "error", type: "not-run", message: trouble.message, details: [] };
  }
}

function placed(
  span: { readonly file: string; readonly start: number } | undefined,
  lines: FileLines,
): readonly string[] {
  if (span === undefined) return [];
  const { line, column } = lines.of(span.file).placeOf(span.start);
  return [`${span.file}:${line}:${column}`];
}

function lengthOf(outcome: StrokeOutcome): number {
  return outcome.kind === "cannot" ? 0 : outcome.run.ended;
}

function seconds(time: number): string {
  return (time / second).toFixed(3);
}
