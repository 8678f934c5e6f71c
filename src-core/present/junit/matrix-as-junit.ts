import { second } from "../../bench/time/time.ts";
import type { Span } from "../../finding.ts";
import type { MatrixCell, MatrixResult, StrokeOutcome } from "../../matrix-result.ts";
import { type Trouble, troubleOf } from "../../matrix-verdict.ts";
import { boundsInWords, placedInWords } from "../details.ts";
import type { FileLines } from "../line-index.ts";
import { junitDocument, type TestCase, type TestSuite, type TestTrouble } from "./junit-document.ts";

/**
 * Matrices as JUnit XML: a suite per firmware, a case per cell and stroke; a failure is what was judged wrong, an error
 * what could not be run. Class names make groups: the mouse, then the PC. `time` is the length of the run in virtual
 * seconds, so that the same seed gives the same document.
 */
export function matricesAsJUnit(
  matrices: readonly { readonly project: string; readonly result: MatrixResult }[],
  lines: FileLines,
): string {
  return junitDocument(
    matrices.map(
      ({ project, result }): TestSuite => ({
        name: project,
        cases: result.cells.flatMap((cell) => cell.outcomes.map((outcome) => testCase(cell, outcome, lines))),
      }),
    ),
  );
}

function testCase({ mouse, pc }: MatrixCell, outcome: StrokeOutcome, lines: FileLines): TestCase {
  const trouble = troubleOf(outcome);
  return {
    classname: `${mouse}.${pc}`,
    name: outcome.stroke,
    seconds: lengthOf(outcome) / second,
    trouble: trouble === undefined ? undefined : inJUnit(trouble, lines),
    output: [],
  };
}

function inJUnit(trouble: Trouble, lines: FileLines): TestTrouble {
  switch (trouble.kind) {
    case "failure": {
      const { rule, message, span, time } = trouble.failure;
      const details = [
        ...placed(span, lines),
        `first at ${(time / second).toFixed(3)} s`,
        ...boundsInWords(trouble.failure),
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

function placed(span: Span | undefined, lines: FileLines): readonly string[] {
  return span === undefined ? [] : [placedInWords(span, lines)];
}

function lengthOf(outcome: StrokeOutcome): number {
  return outcome.kind === "cannot" ? 0 : outcome.run.ended;
}
