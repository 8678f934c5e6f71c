import { expect, test } from "vitest";
import type { CheckResult } from "../../../src-core/check-result.ts";
import type { Edit } from "../../../src-core/finding.ts";
import { actionsAt } from "../../../src-core/service/actions.ts";

const file = "main.c";

/** A result with one finding where `text` has `«` and `»`, and the text without them. */
function faulty(marked: string, rule = "ps2/request-hold-short") {
  const start = marked.indexOf("«");
  const end = marked.indexOf("»") - 1;
  const span = { file, start, end };
  const fixes = [{ title: "Put it right", edits: [{ span, text: "100" }] }];
  const finding = { rule, severity: "error", span, message: "m", related: [], fixes } as const;
  const result: CheckResult = {
    findings: [finding],
    notUnderstood: [],
    settingsFaults: [],
    files: [file],
    checked: [],
  };
  return { result, span, text: marked.replace(/[«»]/g, "") };
}

function applied(text: string, edits: readonly Edit[]): string {
  const [edit, ...more] = edits;
  if (edit === undefined) return text;
  return applied(text.slice(0, edit.span.start) + edit.text + text.slice(edit.span.end), more);
}

test("a finding offers its fixes first, then to allow it", () => {
  const { result, span, text } = faulty("hold(«60»);\n");
  const actions = actionsAt(result, span, text);
  expect(actions.map(({ kind }) => kind)).toEqual(["fix", "allow"]);
  expect(applied(text, actions[0]?.edits ?? [])).toBe("hold(100);\n");
});

test.each([
  ["at its start", (start: number) => start, true],
  ["at its end", (_: number, end: number) => end, true],
  ["before it", (start: number) => start - 1, false],
  ["behind it", (_: number, end: number) => end + 1, false],
])("a cursor %s", (_, place, touches) => {
  const { result, span, text } = faulty("hold(«60»);\n");
  const at = place(span.start, span.end);
  expect(actionsAt(result, { file, start: at, end: at }, text).length > 0).toBe(touches);
});

test("the note stands on a line of its own, indented like the code, with the file's line ends", () => {
  const { result, span, text } = faulty("{\r\n\thold(«60»);\r\n}\r\n");
  const [, allow] = actionsAt(result, span, text);
  expect(applied(text, allow?.edits ?? [])).toBe(
    '{\r\n\t// @wire allow ps2/request-hold-short because "say here why it is right"\r\n\thold(60);\r\n}\r\n',
  );
});

test("the note never splits a continued line", () => {
  const { result, span, text } = faulty("int x;\n#define HOLD() \\\n  hold( \\\n  «60»)\n");
  const [, allow] = actionsAt(result, span, text);
  expect(applied(text, allow?.edits ?? [])).toMatch(
    /^int x;\n\/\/ @wire allow [^\n]*\n#define HOLD\(\) \\\n/,
  );
});

test("a fault of a note is not allowed by another note", () => {
  const { result, span, text } = faulty("// @wire «bord»\n", "note/unknown-name");
  expect(actionsAt(result, span, text).map(({ kind }) => kind)).toEqual(["fix"]);
});

test("a fault of edgewise.json offers what was proposed", () => {
  const span = { file: "edgewise.json", start: 2, end: 8 };
  const fix = { title: 'Write "board"', edits: [{ span, text: '"board"' }] };
  const settingsFaults = [{ span, message: "m", fix }];
  const result: CheckResult = { findings: [], notUnderstood: [], settingsFaults, files: [], checked: [] };
  expect(actionsAt(result, span, '{ "bord": {} }')).toEqual([
    { title: 'Write "board"', kind: "fix", edits: fix.edits, finding: undefined },
  ]);
});
