import "../../house/rule-table.ts";
import { describe, expect, it } from "vitest";
import { rules } from "../../../src-core/checks/registry.ts";
import type { Example, Rule } from "../../../src-core/checks/rule.ts";
import { judgeTrials, runRules, together } from "../../../src-core/checks/run-rules.ts";
import { editedText } from "../../../src-core/edited-text.ts";
import type { Facts } from "../../../src-core/facts/facts.ts";
import type { Edit, Finding, Fix, RuleLevel } from "../../../src-core/finding.ts";
import { findProjects } from "../../../src-core/project/find-projects.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { mendReports } from "../../../src-core/reports/mend/mend-reports.ts";
import { tryReports } from "../../../src-core/reports/try-reports.ts";
import { mendingOf } from "../../../src-core/service/mending.ts";
import { ProjectReader, type ProjectReading } from "../../../src-core/service/project-reading.ts";
import { vocabulary } from "../../../src-core/service/vocabulary.ts";
import { runWhole } from "../../../src-core/service/whole-runs/run-whole.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

/**
 * Snippets that carry what is expected of them. Under the offending code stands a comment with carets, the rule and
 * a part of the message:
 *
 *       UBRR0 = 416;
 *       //      ^^^ serial/baud-error: 832
 *
 * Further lines of carets belong to the same line of code.
 */
export interface Snippets {
  readonly wrong: Readonly<Record<string, Example>>;
  readonly right: Readonly<Record<string, Example>>;
}

const grammar = await loadGrammar();

/** Facts of a project made of these files. */
export function factsOf(example: Example): Facts {
  return readingOf(example).facts;
}

function readingOf(example: Example): ProjectReading {
  const host = hostOfFiles(example);
  const [project] = findProjects(host, ".", { vocabulary, startName: "" });
  if (project === undefined) throw new Error("the snippet holds no project");
  return new ProjectReader(host, grammar).read(project);
}

const ownLevels: ReadonlyMap<string, RuleLevel> = new Map();

/** Findings of `among` (all rules unless given) at their own levels. */
export function findingsIn(example: Example, among: readonly Rule[] = rules): readonly Finding[] {
  const reading = readingOf(example);
  const read = runRules(reading.facts, ownLevels, among);
  const { findings, notUnderstood } = together(read, triedBy(reading, among));
  expect(notUnderstood).toEqual([]);
  return findings;
}

/** What running the example shows, as far as rules ask for it. */
function triedBy(reading: ProjectReading, among: readonly Rule[]) {
  const judging = among.filter((rule) => (rule.judge ?? rule.judgeParts) !== undefined);
  if (judging.length === 0) return { findings: [], notUnderstood: [] };
  const { program, notes } = reading.facts;
  const tried = tryReports(program, notes);
  const reports = tried && mendReports(tried, mendingOf(reading, undefined));
  const isRunWhole = judging.some((rule) => rule.judge !== undefined);
  const whole = isRunWhole ? runWhole(reading, undefined) : { runs: [], notRun: [] };
  if (reports === undefined || whole === undefined) throw new Error("nobody cancelled it");
  // A snippet that says with which mouse it is run has to be run to its end.
  if (reading.project.settings.simulate.mice.length > 0) expect(whole.notRun).toEqual([]);
  return judgeTrials(reading.facts, { reports, runs: whole.runs }, ownLevels, judging);
}

/** Tests a rule: its own two examples, the snippets, and every fix that it offers on the wrong ones. */
export function ruleTests(rule: Rule, { wrong, right }: Snippets): void {
  describe(rule.id, () => {
    it("finds its own wrong example, and nothing else is wrong there", () => {
      const findings = findingsIn(rule.wrong, withAll(rule));
      expect([...new Set(findings.map((finding) => finding.rule))]).toEqual([rule.id]);
    });
    it("leaves its own right example alone", () => {
      expect(brief(findingsIn(rule.right, withAll(rule)), rule.right)).toEqual([]);
    });
    describe("wrong", () => {
      for (const [name, example] of Object.entries(wrong)) {
        it(name, ({ task }) => {
          const findings = findingsIn(example, [rule]);
          const expected = expectations(example, rule.id);
          const { missed, notExpected } = compared(findings, expected, example);
          task.meta.snippet = {
            rule: rule.id,
            expected: "wrong",
            found: expected.length - missed.length,
            missed: missed.length,
            falseAlarms: notExpected.length,
          };
          expect({ missed, notExpected }).toEqual({ missed: [], notExpected: [] });
          expect(expected.length).toBeGreaterThan(0);
          for (const finding of findings)
            for (const fix of finding.fixes) expectRemoved(rule, example, finding, fix);
        });
      }
    });
    describe("right", () => {
      for (const [name, example] of Object.entries(right)) {
        it(name, ({ task }) => {
          expect(expectations(example, rule.id)).toEqual([]);
          const alarms = brief(findingsIn(example, [rule]), example);
          const falseAlarms = alarms.length;
          task.meta.snippet = { rule: rule.id, expected: "right", found: 0, missed: 0, falseAlarms };
          expect(alarms).toEqual([]);
        });
      }
    });
  });
}

/** All rules, and one that may not be among them yet. */
function withAll(rule: Rule): readonly Rule[] {
  return [...new Set([...rules, rule])];
}

/** What a caret line says: lines from 1, columns from 1 with the end behind the last character. */
interface Expectation {
  readonly file: string;
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly part: string;
}

const caretLine = /^[\s/*#]*?(\^+)\s+([a-z0-9-]+\/[a-z0-9-]+)(?::\s*(.*?))?\s*(?:\*\/)?\s*$/;

function expectations(example: Example, rule: string): Expectation[] {
  const found: Expectation[] = [];
  for (const [file, text] of Object.entries(example)) {
    let code = 0;
    for (const [index, line] of text.split("\n").entries()) {
      const match = caretLine.exec(line);
      if (match === null) {
        code = index + 1;
        continue;
      }
      const [, carets = "", id, part = ""] = match;
      if (id !== rule) continue;
      const from = line.indexOf("^") + 1;
      found.push({ file, line: code, from, to: from + carets.length, part });
    }
  }
  return found;
}

function compared(findings: readonly Finding[], expected: readonly Expectation[], example: Example) {
  const left = [...findings];
  const missed: string[] = [];
  for (const each of expected) {
    const at = left.findIndex((finding) => fits(finding, each, example));
    if (at < 0) missed.push(`${each.file}:${each.line}:${each.from}-${each.to} ${each.part}`);
    else left.splice(at, 1);
  }
  return { missed, notExpected: brief(left, example) };
}

function fits(finding: Finding, each: Expectation, example: Example): boolean {
  const { span, message } = finding;
  const place = placeOf(example[span.file] ?? "", span.start);
  const isThere = span.file === each.file && place.line === each.line && place.column === each.from;
  return isThere && span.end - span.start === each.to - each.from && message.includes(each.part);
}

function placeOf(text: string, offset: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, offset).split("\n");
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}

/** Findings as a failing test should show them. */
function brief(findings: readonly Finding[], example: Example): string[] {
  return findings.map(({ rule, span, message }) => {
    const { line, column } = placeOf(example[span.file] ?? "", span.start);
    return `${span.file}:${line}:${column}-${column + span.end - span.start} ${rule}: ${message}`;
  });
}

/** A fix, applied, leaves fewer findings of the rule, none of which is the one it was for. */
function expectRemoved(rule: Rule, example: Example, finding: Finding, fix: Fix): void {
  const mended = withEdits(example, fix.edits);
  const before = findingsIn(example, [rule]);
  const after = findingsIn(mended, [rule]);
  expect(after.length, `${fix.title}: ${finding.message}\n${Object.values(mended).join("\n")}`).toBeLessThan(
    before.length,
  );
}

/** The files after these edits, which must not overlap. */
export function withEdits(example: Example, edits: readonly Edit[]): Example {
  const files = Object.entries(example).map(([file, text]) => {
    const own = edits.filter(({ span }) => span.file === file);
    const inOrder = own.toSorted((a, b) => a.span.start - b.span.start);
    for (const [index, { span }] of inOrder.entries())
      expect(span.start).toBeGreaterThanOrEqual(inOrder[index - 1]?.span.end ?? 0);
    return [file, editedText(text, own)];
  });
  for (const { span } of edits) expect(Object.keys(example)).toContain(span.file);
  return Object.fromEntries(files);
}
