import { describe, expect, it } from "vitest";
import type { Finding } from "../../../../src-core/finding.ts";
import { applyAllows } from "../../../../src-core/notes/allow/apply-allows.ts";
import { type Allowance, allowanceOf } from "../../../../src-core/notes/attachment/allowance.ts";
import { fileCode } from "../../../../src-core/notes/attachment/file-code.ts";
import { readNotes } from "../../../../src-core/notes/read-notes.ts";
import { lexFile } from "../../../../src-core/reader/lexer/lex-file.ts";
import { SMALL_VOCABULARY } from "../small-vocabulary.ts";

const ALLOW = '@wire allow ps2/wait-forever because "so"';

const OPTIONS = { checked: new Set(["ps2/wait-forever"]), unattached: "warning" } as const;

function placed(text: string) {
  const lexed = lexFile("a.c", text, "c++");
  const code = fileCode(lexed);
  return readNotes(lexed.comments, SMALL_VOCABULARY).notes.flatMap((note) =>
    note.kind === "allow" ? [allowanceOf(note, code)] : [],
  );
}

function regions(text: string): readonly string[] {
  return placed(text).map((each) =>
    "region" in each ? text.slice(each.region.start, each.region.end).trim() : each.message,
  );
}

describe("where an allow holds", () => {
  it.each([
    [
      "the statement below",
      `void f() {\n  // ${ALLOW}\n  while (x) { y(); }\n  z();\n}`,
      "while (x) { y(); }",
    ],
    [
      "the function below",
      `// ${ALLOW}\nvoid f(void) { while (x); }\nvoid g(void);`,
      "void f(void) { while (x); }",
    ],
    ["the variable below", `/* ${ALLOW} */\nstatic int a = 1; int b;`, "static int a = 1;"],
    ["the define below", `// ${ALLOW}\n#define A \\\n  1\n#define B 2`, "#define A \\\n  1"],
    ["the enumerator below", `enum {\n  // ${ALLOW}\n  A = 1,\n  B };`, "A = 1"],
    ["the line", `f(); g(); // ${ALLOW}\nh();`, `f(); g(); // ${ALLOW}`],
    [
      "all of the statement that ends on the line",
      `f(1,\n  2); // ${ALLOW}\nh();`,
      `f(1,\n  2); // ${ALLOW}`,
    ],
    [
      "a block that opens on the line",
      `a(); while (x) { // ${ALLOW}\n  y();\n}\nz();`,
      `a(); while (x) { // ${ALLOW}\n  y();\n}`,
    ],
    ["a define on the line", `#define A 1 // ${ALLOW}\nint b;`, `#define A 1 // ${ALLOW}`],
  ])("%s", (_, text, region) => {
    expect(regions(text)).toEqual([region]);
  });

  it.each([`int a;\n// ${ALLOW}\n`, `void f() {\n  x();\n  // ${ALLOW}\n}`])("nowhere: %s", (text) => {
    expect(placed(text)).toMatchObject([
      {
        rule: "note/unattached",
        message:
          "`allow` belongs to a declaration or statement below it or on its line, but nothing follows it",
      },
    ]);
  });
});

describe("what is allowed", () => {
  const text = `// ${ALLOW}\nvoid f() { while (x) ; }\nvoid g() { while (y) ; }\n`;
  const allowances = placed(text).filter((each): each is Allowance => "region" in each);

  function finding(rule: string, marker: string): Finding {
    const start = text.indexOf(marker);
    const span = { file: "a.c", start, end: start + marker.length };
    return { rule, severity: "error", span, message: "", related: [], fixes: [] };
  }

  const inF = finding("ps2/wait-forever", "while (x)");
  const inG = finding("ps2/wait-forever", "while (y)");
  const other = finding("ps2/no-pullup", "while (x)");

  it("leaves out findings of the rule in the region, and no others", () => {
    expect(applyAllows([inF, other, inG], allowances, OPTIONS)).toEqual([other, inG]);
    const elsewhere = { ...inF, span: { ...inF.span, file: "b.c" } };
    expect(applyAllows([inF, elsewhere], allowances, OPTIONS)).toEqual([elsewhere]);
  });

  it("reports an allow that allowed nothing, in its place among the findings", () => {
    const found = applyAllows([other, inG], allowances, OPTIONS);
    expect(found.map((each) => each.rule)).toEqual(["note/unattached", "ps2/no-pullup", "ps2/wait-forever"]);
    expect(found[0]).toMatchObject({
      severity: "warning",
      message: "there is nothing to allow: `ps2/wait-forever` finds no fault here; take the note out",
      fixes: [{ edits: [{ span: { start: 0, end: text.indexOf("\n") }, text: "" }] }],
    });
  });

  it("says nothing of rules that were not checked, or where note/unattached is off", () => {
    expect(applyAllows([], allowances, { checked: new Set(), unattached: "error" })).toEqual([]);
    expect(applyAllows([], allowances, { ...OPTIONS, unattached: "off" })).toEqual([]);
    expect(applyAllows([], allowances, { ...OPTIONS, unattached: "error" })).toMatchObject([
      { severity: "error" },
    ]);
  });
});
