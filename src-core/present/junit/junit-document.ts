import { attributes, textOf } from "../xml.ts";

export interface TestSuite {
  readonly name: string;
  readonly cases: readonly TestCase[];
}

export interface TestCase {
  /** Its parts are divided by a dot, by which readers make groups. */
  readonly classname: string;
  readonly name: string;
  readonly seconds: number;
  /** Undefined for a case that passed. */
  readonly trouble: TestTrouble | undefined;
  /** What a case says that is no failure: lines. */
  readonly output: readonly string[];
}

export interface TestTrouble {
  /** A failure is what was judged wrong, an error what could not be judged. */
  readonly element: "failure" | "error";
  readonly type: string;
  readonly message: string;
  /** Lines. */
  readonly details: readonly string[];
}

/**
 * A document of JUnit XML, ended by a line feed. There is no standard of it; elements and attributes are those that the
 * schema known as junit-10.xsd requires and allows (from memory): `testsuites` of `testsuite` with name, tests, failures
 * and errors; `testcase` with name, classname and time; in it `failure` or `error` with type and message, and
 * `system-out`.
 */
export function junitDocument(suites: readonly TestSuite[]): string {
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    "<testsuites>",
    ...suites.map(suiteOf),
    "</testsuites>",
    "",
  ].join("\n");
}

function suiteOf({ name, cases }: TestSuite): string {
  const count = (element: TestTrouble["element"]): number =>
    cases.filter(({ trouble }) => trouble?.element === element).length;
  const head = attributes({
    name,
    tests: cases.length,
    failures: count("failure"),
    errors: count("error"),
    time: inSeconds(cases.reduce((sum, { seconds }) => sum + seconds, 0)),
  });
  return [`  <testsuite ${head}>`, ...cases.map(caseOf), "  </testsuite>"].join("\n");
}

function caseOf({ classname, name, seconds, trouble, output }: TestCase): string {
  const head = attributes({ classname, name, time: inSeconds(seconds) });
  const inside = [
    ...(trouble === undefined ? [] : [troubleOf(trouble)]),
    ...(output.length === 0 ? [] : [`      <system-out>${textOf(output.join("\n"))}</system-out>`]),
  ];
  if (inside.length === 0) return `    <testcase ${head}/>`;
  return [`    <testcase ${head}>`, ...inside, "    </testcase>"].join("\n");
}

function troubleOf({ element, type, message, details }: TestTrouble): string {
  return `      <${element} ${attributes({ type, message })}>${textOf(details.join("\n"))}</${element}>`;
}

function inSeconds(seconds: number): string {
  return seconds.toFixed(3);
}
