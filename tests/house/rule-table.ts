import type { Reporter, TestCase, TestModule } from "vitest/node";

/** What a test of a rule's snippet leaves for the table. */
export interface SnippetMeta {
  readonly rule: string;
  readonly expected: "wrong" | "right";
  /** Faults that were found where the snippet says, of those that it says. */
  readonly found: number;
  readonly missed: number;
  /** Findings that nobody expects. */
  readonly falseAlarms: number;
}

declare module "vitest" {
  interface TaskMeta {
    snippet?: SnippetMeta;
  }
}

interface Row {
  readonly rule: string;
  readonly wrong: number;
  readonly found: number;
  readonly missed: number;
  readonly right: number;
  readonly falseAlarms: number;
}

/** One row for each rule, by id. */
export function rowsOf(snippets: readonly SnippetMeta[]): readonly Row[] {
  const rules = [...new Set(snippets.map(({ rule }) => rule))].sort();
  return rules.map((rule) => {
    const own = snippets.filter((each) => each.rule === rule);
    const sum = (figure: "found" | "missed" | "falseAlarms") =>
      own.reduce((total, each) => total + each[figure], 0);
    return {
      rule,
      wrong: own.filter(({ expected }) => expected === "wrong").length,
      found: sum("found"),
      missed: sum("missed"),
      right: own.filter(({ expected }) => expected === "right").length,
      falseAlarms: sum("falseAlarms"),
    };
  });
}

export function tableOf(rows: readonly Row[]): string {
  const head = ["rule", "wrong snippets", "faults found", "missed", "right snippets", "false alarms"];
  const cells = rows.map(({ rule, wrong, found, missed, right, falseAlarms }) =>
    [rule, wrong, found, missed, right, falseAlarms].map(String),
  );
  const widths = head.map((title, column) =>
    Math.max(title.length, ...cells.map((row) => row[column]?.length ?? 0)),
  );
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0),
      )
      .join("  ");
  return [head, ...cells].map(line).join("\n");
}

/** Prints a table of the rules whose snippets were tested: what was found, missed and alarmed about for nothing. */
export class RuleTable implements Reporter {
  readonly #snippets: SnippetMeta[] = [];

  onTestCaseResult(test: TestCase): void {
    const { snippet } = test.meta();
    if (snippet !== undefined) this.#snippets.push(snippet);
  }

  onTestRunEnd(_: readonly TestModule[]): void {
    if (this.#snippets.length === 0) return;
    process.stdout.write(`\n${tableOf(rowsOf(this.#snippets))}\n`);
  }
}

export default RuleTable;
