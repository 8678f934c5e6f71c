import type { CheckResult } from "../../check-result.ts";
import type { Finding, Severity } from "../../finding.ts";
import { boundsInWords, placedInWords } from "../details.ts";
import type { FileLines } from "../line-index.ts";
import { junitDocument, type TestCase, type TestSuite } from "./junit-document.ts";

/**
 * A check as JUnit XML: a suite per file, in it a case for having been read and one per rule that found something there.
 * A case fails where one of its findings has a level of `failing`; other findings are its output, as are gaps of the file.
 */
export function checkAsJUnit(result: CheckResult, lines: FileLines, failing: ReadonlySet<Severity>): string {
  const gaps = (file: string): readonly string[] =>
    result.notUnderstood
      .filter(({ span }) => span.file === file)
      .map(({ span, message }) => `${placedInWords(span, lines)} not understood, so not checked: ${message}`);
  const files = new Set([...result.files, ...result.findings.map(({ span }) => span.file)]);
  return junitDocument(
    [...files].map((file): TestSuite => {
      const findings = result.findings.filter(({ span }) => span.file === file);
      const rules = [...new Set(findings.map(({ rule }) => rule))];
      const cases = rules.map((rule) =>
        caseOf(
          rule,
          findings.filter((finding) => finding.rule === rule),
          lines,
          failing,
        ),
      );
      const whole = { classname: "check", name: "read", seconds: 0, trouble: undefined, output: gaps(file) };
      return { name: file, cases: [whole, ...cases] };
    }),
  );
}

function caseOf(
  rule: string,
  findings: readonly Finding[],
  lines: FileLines,
  failing: ReadonlySet<Severity>,
): TestCase {
  const failures = findings.filter(({ severity }) => failing.has(severity));
  const advice = findings.filter(({ severity }) => !failing.has(severity));
  const [first, ...more] = failures;
  const [group = ""] = rule.split("/");
  const count = more.length === 0 ? "" : ` (and ${more.length} more)`;
  return {
    classname: group,
    name: rule,
    seconds: 0,
    trouble: first && {
      element: "failure",
      type: first.severity,
      message: `${first.message}${count}`,
      details: failures.flatMap((finding) => inWords(finding, lines)),
    },
    output: advice.flatMap((finding) => inWords(finding, lines)),
  };
}

function inWords(finding: Finding, lines: FileLines): readonly string[] {
  return [
    `${placedInWords(finding.span, lines)} ${finding.severity}: ${finding.message}`,
    ...boundsInWords(finding),
    ...finding.fixes.map(({ title }) => `fix ${title}`),
  ];
}
