import type { CheckResult } from "../../check-result.ts";
import { editedText } from "../../edited-text.ts";
import type { Fix } from "../../finding.ts";
import type { RuleDescription } from "../../rule-description.ts";
import { FileLines } from "../line-index.ts";
import { checkAsText } from "../text/check-as-text.ts";
import { plain } from "../text/paint.ts";
import { changedLines } from "./changed-lines.ts";
import { block, page, table } from "./markdown.ts";

/** What the page of a rule is made from. */
export interface RulePageContent {
  readonly rule: RuleDescription;
  /** File name to text. */
  readonly wrong: Readonly<Record<string, string>>;
  readonly right: Readonly<Record<string, string>>;
  /** What a check says of the wrong example. */
  readonly said: CheckResult;
}

/** The page of a rule in Markdown. */
export function rulePage({ rule, wrong, right, said }: RulePageContent): string {
  const lines = new FileLines((file) => wrong[file]);
  const fixes = said.findings.flatMap(({ rule: id, fixes: own }) => (id === rule.id ? own : []));
  return page([
    `# ${rule.title}`,
    `\`${rule.id}\`, ${levelInWords[rule.severity]} unless the project says otherwise.`,
    rule.why,
    "## Wrong",
    ...filesAsBlocks(wrong),
    "This is said of it:",
    block("text", checkAsText(said, lines, plain)),
    ...fixParts(fixes, wrong),
    "## Right",
    ...filesAsBlocks(right),
    "## Source",
    rule.source,
    ...acceptParts(rule.id),
    "[All rules](../README.md)",
  ]);
}

/** The page that lists all rules; links are relative to the folder of the pages. */
export function ruleIndex(rules: readonly RuleDescription[]): string {
  const groups = [...new Set(rules.map(({ id }) => groupOf(id)))];
  return page([
    "# Rules",
    "Each page says what a rule finds and why it matters, with a wrong and a right example, where its limit comes " +
      "from, and how to accept what it finds.",
    ...groups.flatMap((group) => [
      `## ${group}`,
      table(
        ["rule", "finds", "level"],
        rules
          .filter(({ id }) => groupOf(id) === group)
          .map(({ id, title, severity }) => [`[\`${id}\`](${id}.md)`, title, severity]),
      ),
    ]),
  ]);
}

const levelInWords = { error: "an error", warning: "a warning", info: "advice" } as const;

function groupOf(id: string): string {
  return id.slice(0, id.indexOf("/"));
}

function fixParts(fixes: readonly Fix[], files: Readonly<Record<string, string>>): readonly string[] {
  if (fixes.length === 0) return [];
  return [
    fixes.length === 1 ? "This fix is offered:" : "These fixes are offered:",
    ...fixes.flatMap((fix) => [`*${fix.title}*`, block("diff", asDiff(fix, files))]),
  ];
}

function asDiff({ edits }: Fix, files: Readonly<Record<string, string>>): string {
  const changed = [...new Set(edits.map(({ span }) => span.file))];
  return changed
    .flatMap((file) => {
      const before = files[file] ?? "";
      const inFile = edits.filter(({ span }) => span.file === file);
      return changedLines(before, editedText(before, inFile));
    })
    .join("\n");
}

function acceptParts(id: string): readonly string[] {
  const parts = ["## To accept it"];
  // A fault of a note is mended in the note.
  if (!id.startsWith("note/")) {
    parts.push(
      "At one place, with a wire note above the line or at its end that says why it is right there:",
      block("c", `// @wire allow ${id} because "the reason"`),
    );
  }
  parts.push(
    "In the whole project, or with another level, in `edgewise.json`:",
    block("json", `{ "rules": { "${id}": "off" } }`),
  );
  return parts;
}

function filesAsBlocks(files: Readonly<Record<string, string>>): readonly string[] {
  const entries = Object.entries(files);
  return entries.flatMap(([name, text]) => [
    ...(entries.length === 1 ? [] : [`\`${name}\``]),
    block(languageOf(name), text),
  ]);
}

function languageOf(name: string): string {
  if (name.endsWith(".json")) return "json";
  return name.endsWith(".c") || name.endsWith(".h") ? "c" : "cpp";
}
