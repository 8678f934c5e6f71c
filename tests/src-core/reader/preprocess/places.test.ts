import { describe, expect, test } from "vitest";
import type { Span } from "../../../../src-core/finding.ts";
import { type Token, visibleRange, visibleSpan } from "../../../../src-core/reader/tokens.ts";
import { readFiles, readText } from "./read.ts";

function cut(text: string, span: Span | undefined): string {
  return text.slice(span?.start, span?.end);
}

function find(tokens: readonly Token[], text: string): Token {
  const token = tokens.find((each) => each.text === text);
  if (token === undefined) throw new Error(`no token ${text}`);
  return token;
}

describe("where a token comes from", () => {
  test("a token of the file is at its own place and from no macro", () => {
    const text = "int  answer = 42;";
    const token = find(readText(text).tokens, "answer");
    expect(cut(text, token)).toBe("answer");
    expect(token.macro).toBeUndefined();
    expect(token.space).toBe(true);
  });

  test("a token of a body stands in the #define and names the call", () => {
    const text = "#define TICKS 16000\nx = TICKS;";
    const token = find(readText(text).tokens, "16000");
    expect(cut(text, token)).toBe("16000");
    expect(token.macro?.name).toBe("TICKS");
    expect(cut(text, token.macro?.call)).toBe("TICKS");
    expect(token.macro?.call.start).toBe(24);
    expect(cut(text, token.macro?.definition)).toBe("TICKS");
    expect(token.macro?.definition?.start).toBe(8);
    expect(token.macro?.within).toBeUndefined();
    expect(cut(text, visibleSpan(token))).toBe("TICKS");
  });

  test("calls inside bodies lead outwards to the call in the file", () => {
    const text = "#define A 7\n#define B(x) (A + x)\n#define C B(1)\ny = C + B(2);";
    const tokens = readText(text).tokens;
    const sevens = tokens.filter((token) => token.text === "7");
    expect(sevens.map((token) => cut(text, visibleSpan(token)))).toEqual(["C", "B(2)"]);
    const [first] = sevens;
    expect([first?.macro?.name, first?.macro?.within?.name, first?.macro?.within?.within?.name]).toEqual([
      "A",
      "B",
      "C",
    ]);
    expect(cut(text, first?.macro?.within?.call)).toBe("B(1)");
  });

  test("an argument stays where it was written", () => {
    const text = "#define twice(x) (x + x)\nz = twice( value );";
    const values = readText(text).tokens.filter((token) => token.text === "value");
    expect(values.map((token) => cut(text, visibleSpan(token)))).toEqual(["value", "value"]);
    expect(values.map((token) => visibleSpan(token).start)).toEqual([
      text.indexOf("value"),
      text.indexOf("value"),
    ]);
  });

  test("a call in an argument is in the file itself", () => {
    const text = "#define one 1\n#define id(x) x\nz = id(one + 2);";
    const { tokens, uses } = readText(text);
    const token = find(tokens, "1");
    expect(cut(text, visibleSpan(token))).toBe("one");
    expect(token.macro?.within).toBeUndefined();
    expect(uses.map((use) => cut(text, use.call)).sort()).toEqual(["id(one + 2)", "one"]);
  });

  test("# and ## leave a token at their own place", () => {
    const text = "#define s(x) #x\n#define c(x, y) x ## y\ns(a) c(p, q)";
    const { tokens } = readText(text);
    expect(cut(text, find(tokens, '"a"'))).toBe("#");
    expect(cut(text, find(tokens, "pq"))).toBe("##");
    expect(cut(text, visibleSpan(find(tokens, "pq")))).toBe("c(p, q)");
  });

  test("a range over a macro and its surroundings", () => {
    const text = "#define HALF / 2\nz = (a HALF);";
    const { tokens } = readText(text);
    const range = visibleRange(find(tokens, "("), find(tokens, ")"));
    expect(cut(text, range)).toBe("(a HALF)");
  });

  test("continued lines and carriage returns count", () => {
    const text = "#define A 1 + \\\r\n 2\r\nx\\\r\ny A";
    const { tokens } = readText(text);
    expect(tokens.map((token) => token.text)).toEqual(["xy", "1", "+", "2"]);
    expect(cut(text, find(tokens, "xy"))).toBe("x\\\r\ny");
    expect(cut(text, find(tokens, "2"))).toBe("2");
  });

  test("tokens of an included file carry its path", () => {
    const { tokens } = readFiles(
      { "src/main.c": '#include "a.h"\nb', "src/a.h": "a" },
      { mains: ["src/main.c"] },
    );
    expect(tokens.map((token) => `${token.text} ${token.file}`)).toEqual(["a src/a.h", "b src/main.c"]);
  });
});

describe("what a unit lists", () => {
  const files = {
    "main.c": '#include "a.h"\n#define A 2\n#define F(x, ...) x\n#undef F\nA B\n#if A > 1\n#endif',
    "a.h": "#define A 1\n#define B A",
  };
  const unit = readFiles(files, { defines: { OUTSIDE: "5", "CALL(x)": "x" } });

  test("definitions, redefined and undefined ones included", () => {
    expect(unit.definitions.map(({ name, definition }) => `${name} ${definition?.file}`)).toEqual([
      "A a.h",
      "B a.h",
      "A main.c",
      "F main.c",
    ]);
    expect(unit.definitions.find(({ name }) => name === "F")?.parameters).toEqual(["x", "..."]);
  });

  test("macros that stand at the end, with those from outside", () => {
    expect(unit.macros.get("A")?.body.map((token) => token.text)).toEqual(["2"]);
    expect(unit.macros.get("F")).toBeUndefined();
    expect(unit.macros.get("OUTSIDE")?.definition).toBeUndefined();
    expect(unit.macros.get("CALL")?.parameters).toEqual(["x"]);
  });

  test("uses written in files, conditions included", () => {
    expect(unit.uses.map(({ name, call }) => `${name} ${call.file} ${call.start}`)).toEqual([
      "A main.c 56",
      "B main.c 58",
      "A main.c 64",
    ]);
  });

  test("files in order of first inclusion, the main files first", () => {
    const sketch = {
      "s/s.ino": '#include "b.h"\n',
      "s/z.ino": '#include "a.h"\n#include "b.h"',
      "s/a.h": "",
      "s/b.h": "",
    };
    const { files: read } = readFiles(sketch, { mains: ["s/s.ino", "s/z.ino"], language: "c++" });
    expect(read).toEqual(["s/s.ino", "s/z.ino", "s/b.h", "s/a.h"]);
  });

  test("the files of a sketch share their macros", () => {
    const { tokens } = readFiles({ "a.ino": "#define A 1\n", "b.ino": "A" }, { mains: ["a.ino", "b.ino"] });
    expect(tokens.map((token) => token.text)).toEqual(["1"]);
  });
});
