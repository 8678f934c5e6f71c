import { expect, test } from "vitest";
import { applyBaseline } from "../../../src-core/baseline/apply-baseline.ts";
import { readBaseline } from "../../../src-core/baseline/read-baseline.ts";
import { baselineText } from "../../../src-core/baseline/write-baseline.ts";
import { editedText } from "../../../src-core/edited-text.ts";
import type { Finding } from "../../../src-core/finding.ts";

/** A finding at the first character of each line that has `!`, with that line. */
function findingsIn(files: Readonly<Record<string, string>>, rule = "ps2/wait-forever"): readonly Finding[] {
  return Object.entries(files).flatMap(([file, text]) =>
    [...text.matchAll(/^.*!.*$/gm)].map((line) => ({
      rule,
      severity: "error" as const,
      span: { file, start: line.index, end: line.index + 1 },
      message: "it waits",
      related: [],
      fixes: [],
    })),
  );
}

const lineOf = (files: Readonly<Record<string, string>>) => (finding: Finding) =>
  (files[finding.span.file] ?? "").slice(finding.span.start).split("\n")[0] ?? "";

const same = (file: string) => file;

function baselineOf(text: string) {
  const read = readBaseline("accepted.json", text, same);
  if (!("entries" in read)) throw new Error(read.message);
  return read;
}

const before = { "a.c": "x\n  while (1) !;\ny\nwhile (1) !;\n", "b.c": "!b\n" };
const written = baselineText(findingsIn(before), lineOf(before), same);

function applied(files: Readonly<Record<string, string>>, text = written, rule?: string) {
  const findings = findingsIn(files, rule);
  return applyBaseline(findings, baselineOf(text), {
    lineOf: lineOf(files),
    isChecked: () => true,
    unattached: "warning",
  });
}

test("the file is plain JSON, a line for each line of code", () => {
  expect(written).toBe(`{
  "version": 1,
  "accepted": [
    {"rule":"ps2/wait-forever","file":"a.c","text":"while (1) !;","times":2},
    {"rule":"ps2/wait-forever","file":"b.c","text":"!b"}
  ]
}
`);
  expect(baselineText([], lineOf({}), same)).toBe('{\n  "version": 1,\n  "accepted": []\n}\n');
});

test("what it accepts is left out, wherever the line has moved to and however it is indented", () => {
  expect(applied(before)).toEqual({ findings: [], accepted: 3 });
  const moved = { "a.c": "\n\n\t\twhile  (1)  !;\n\nwhile (1) !;\n", "b.c": "int x;\n    !b\n" };
  expect(applied(moved)).toEqual({ findings: [], accepted: 3 });
});

test("each is accepted as often as it was there: one more is reported", () => {
  const more = { ...before, "a.c": `${before["a.c"]}while (1) !;\n` };
  const { findings, accepted } = applied(more);
  expect(accepted).toBe(3);
  // The last of the three.
  const start = before["a.c"].length;
  expect(findings.map(({ span }) => span)).toEqual([{ file: "a.c", start, end: start + 1 }]);
});

test("another rule, another file or another line is not accepted", () => {
  const names = ({ findings }: ReturnType<typeof applied>) =>
    findings.filter(({ rule }) => rule !== "note/unattached").map(({ span }) => span.file);
  expect(names(applied(before, written, "ps2/no-pullup"))).toEqual(["a.c", "a.c", "b.c"]);
  expect(names(applied({ "c.c": before["b.c"] }))).toEqual(["c.c"]);
  expect(names(applied({ ...before, "b.c": "!c\n" }))).toEqual(["b.c"]);
});

test("an entry that accepts nothing is a finding, and its fix takes it out", () => {
  const left = { "a.c": before["a.c"], "b.c": "\n" };
  const { findings } = applied(left);
  expect(findings).toHaveLength(1);
  const [idle] = findings;
  expect(idle).toMatchObject({
    rule: "note/unattached",
    severity: "warning",
    span: { file: "accepted.json" },
  });
  expect(written.slice(idle?.span.start, idle?.span.end)).toContain('"b.c"');
  expect(idle?.message).toContain("`ps2/wait-forever` finds nothing at `!b` in b.c");
  const mended = editedText(written, idle?.fixes[0]?.edits ?? []);
  expect(applied(left, mended)).toEqual({ findings: [], accepted: 2 });
});

test("an entry that accepts more than there is says how many, and its fix writes that", () => {
  const left = { ...before, "a.c": "while (1) !;\n" };
  const { findings } = applied(left);
  expect(findings.map(({ message }) => message)).toEqual([
    "there is nothing to accept: `ps2/wait-forever` finds only 1 of 2 at `while (1) !;` in a.c; write 1",
  ]);
  const mended = editedText(written, findings[0]?.fixes[0]?.edits ?? []);
  expect(applied(left, mended)).toEqual({ findings: [], accepted: 2 });
});

test("nothing is said of what was not checked", () => {
  const options = {
    lineOf: lineOf({}),
    unattached: "warning",
    isChecked: (_: string, file: string) => file === "b.c",
  } as const;
  const { findings } = applyBaseline([], baselineOf(written), options);
  expect(findings.map(({ message }) => message)).toEqual([
    "there is nothing to accept: `ps2/wait-forever` finds nothing at `!b` in b.c; take the entry out",
  ]);
});

test.each([
  ["", 0, /empty/],
  ["[]", 0, /expected an object/],
  ["{", 1, /JSON/],
  ['{"version": 2, "accepted": []}', 12, /`version`: expected a whole number from 1 to 1/],
  ['{"accepted": []}', 0, /there is no `version` in it/],
  ['{"version": 1}', 0, /there is no `accepted` in it/],
  [
    '{"version": 1, "accepted": [{"rule": "ps2/wait-forevr", "file": "a", "text": ""}]}',
    37,
    /ps2\/wait-forever/,
  ],
  ['{"version": 1, "accepted": [{"rule": "ps2/wait-forever", "text": ""}]}', 28, /there is no `file` in it/],
  [
    '{"version": 1, "accepted": [{"rule": "ps2/no-pullup", "file": "a", "text": "", "times": 0}]}',
    88,
    /from 1 to/,
  ],
])("a broken one is said with its place: %s", (text, start, message) => {
  const read = readBaseline("accepted.json", text, same);
  if ("entries" in read) throw new Error("it was read");
  expect(read.span.start).toBe(start);
  expect(read.message).toMatch(message);
});
