import { describe, expect, it } from "vitest";
import type { CheckResult } from "../../src-core/check-result.ts";
import { hostOfFiles } from "../../src-core/reader/source-host.ts";
import { createService } from "../../src-core/service/create-service.ts";
import { loadGrammar } from "../src-core/reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

function check(files: Readonly<Record<string, string>>): CheckResult {
  const service = createService({ host: hostOfFiles(files), grammar, startName: "hostile" });
  const [entry] = service.projectsAt(".");
  if (entry === undefined) throw new Error("no project found");
  return service.check(entry.id);
}

function messages({ notUnderstood }: CheckResult): readonly string[] {
  return notUnderstood.map(({ message }) => message);
}

describe("sources that no compiler would take", () => {
  it("a file that includes itself is bounded, and that is said once", () => {
    const result = check({ "a.c": '#include "a.c"\nint x = 1;\n' });
    expect(messages(result).filter((message) => /includ/i.test(message))).toHaveLength(1);
  });

  it("a macro that would expand without end is bounded, and that is said", () => {
    const doubling = Array.from({ length: 40 }, (_, n) => `#define D${n + 1} D${n} D${n}`).join("\n");
    const result = check({ "a.c": `#define D0 x\n${doubling}\nint before;\nint y = D40;\n` });
    expect(messages(result).filter((message) => /expan/i.test(message))).toHaveLength(1);
  });

  it("a missing include is said once, and the rest is read", () => {
    const include = '#include "nowhere.h"\n';
    const result = check({ "a.c": `${include}${include}// @wire means ps2.request-hodl\n#define HOLD 1\n` });
    expect(messages(result).filter((message) => message.includes("nowhere.h"))).toHaveLength(1);
    expect(result.findings.map(({ rule }) => rule)).toEqual(["note/unknown-name"]);
  });

  it("five megabytes of functions, and of nonsense", () => {
    const one = "static int f(int a) { if (a > 3) { return a * 2; } return f(a + 1); }\n";
    const sane = check({ "a.c": one.repeat(Math.ceil(5_000_000 / one.length)) });
    expect(sane.files).toEqual(["a.c"]);
    const nonsense = check({ "a.c": "({[<#define \"x 'y ".repeat(280_000) });
    expect(nonsense.files).toEqual(["a.c"]);
  });

  it("brackets nested a hundred thousand deep", () => {
    const depth = 100_000;
    for (const [open, close] of [
      ["(", ")"],
      ["{", "}"],
      ["[", "]"],
    ] as const) {
      const result = check({ "a.c": `int x = ${open.repeat(depth)}1${close.repeat(depth)};\nint y;\n` });
      expect(result.files).toEqual(["a.c"]);
    }
    const ifs = check({ "a.c": `${"#if 1\n".repeat(depth)}int x;\n${"#endif\n".repeat(depth)}` });
    expect(ifs.files).toEqual(["a.c"]);
  });
});
