import { describe, expect, test } from "vitest";
import type { Program } from "../../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../../src-core/reader/program/program-cache.ts";
import { visibleRange } from "../../../../src-core/reader/tokens.ts";
import type { At } from "../../../../src-core/reader/typed/nodes.ts";
import { readFiles } from "./read-files.ts";

type Files = Readonly<Record<string, string>>;

interface Case {
  readonly name: string;
  readonly before: Files;
  readonly after: Files;
}

/** The symbols stay, and whatever does not stand in a body that changed. */
const kept: readonly Case[] = [
  {
    name: "a number in a body",
    before: { "a.c": "int f(void) { return 1; }\nint g(void) { return f(); }\n" },
    after: { "a.c": "int f(void) { return 12; }\nint g(void) { return f(); }\n" },
  },
  {
    name: "lines before everything",
    before: { "a.c": "int f(void) { int x = 1; return x; }\nint y = 3;\n" },
    after: { "a.c": "/* a remark */\n\n\nint f(void) { int x = 1; return x; }\nint y = 3;\n" },
  },
  {
    name: "a macro that bodies alone use",
    before: { "a.c": "#define WAIT 100\nint f(void) { return WAIT; }\n" },
    after: { "a.c": "#define WAIT (100 + 20)\nint f(void) { return WAIT; }\n" },
  },
  {
    name: "a local variable more, a static one less",
    before: { "a.c": "int f(void) { static int n; return n; }\n" },
    after: { "a.c": "int f(void) { int n = 2, m = n; return m; }\n" },
  },
  {
    name: "a header that two sources share",
    before: {
      "a.h": "static inline int twice(int x) { return x + x; }\n",
      "a.c": '#include "a.h"\nint f(void) { return twice(1); }\n',
      "b.c": '#include "a.h"\nint g(void) { return twice(2); }\n',
    },
    after: {
      "a.h": "/* longer */ static inline int twice(int x) { return 2 * x; }\n",
      "a.c": '#include "a.h"\nint f(void) { return twice(1); }\n',
      "b.c": '#include "a.h"\nint g(void) { return twice(2); }\n',
    },
  },
  {
    name: "the body of a member function outside its class",
    before: { "a.cpp": "struct A { int f(); int n; };\nint A::f() { return n; }\n" },
    after: { "a.cpp": "struct A { int f(); int n; };\nint A::f() { return this->n + 1; }\n" },
  },
  {
    name: "something that is not understood, in a body",
    before: { "a.c": "int f(void) { return 1; }\nint g(void) { return unknown_name; }\n" },
    after: { "a.c": "int f(void) { return other_name; }\nint g(void) { return unknown_name; }\n" },
  },
];

/** More hangs on the change than one body. */
const typedAnew: readonly Case[] = [
  {
    name: "another type",
    before: { "a.c": "int f(void) { return 1; }\n" },
    after: { "a.c": "char f(void) { return 1; }\n" },
  },
  {
    name: "a declaration more",
    before: { "a.c": "int f(void) { return 1; }\n" },
    after: { "a.c": "int f(void) { return 1; }\nint x;\n" },
  },
  {
    name: "a macro that sizes an array",
    before: { "a.c": "#define SIZE 4\nchar a[SIZE];\n" },
    after: { "a.c": "#define SIZE 5\nchar a[SIZE];\n" },
  },
  {
    name: "a function that sizes an array",
    before: { "a.cpp": "constexpr int size() { return 4; }\nchar a[size()];\n" },
    after: { "a.cpp": "constexpr int size() { return 5; }\nchar a[size()];\n" },
  },
  {
    name: "a function that sizes an array in another one",
    before: { "a.cpp": "constexpr int size() { return 4; }\nint f() { char a[size()]; return sizeof a; }\n" },
    after: { "a.cpp": "constexpr int size() { return 5; }\nint f() { char a[size()]; return sizeof a; }\n" },
  },
  {
    name: "a declaration inside a body that others see",
    before: { "a.c": "int f(void) { extern int x; return x; }\n" },
    after: { "a.c": "int f(void) { extern int y; return y; }\n" },
  },
  {
    name: "a prototype inside a body",
    before: { "a.c": "int g(void);\nint f(void) { int g(void); return g(); }\n" },
    after: { "a.c": "int g(void);\nint f(void) { int g(void); return g() + 1; }\n" },
  },
  {
    name: "a class inside a body",
    before: { "a.cpp": "int f() { struct L { int n; } l = {1}; return l.n; }\n" },
    after: { "a.cpp": "int f() { struct L { int m; } l = {2}; return l.m; }\n" },
  },
  {
    name: "a template that a body instantiates",
    before: { "a.cpp": "template <class T> T twice(T x) { return x + x; }\nint f() { return twice(1); }\n" },
    after: { "a.cpp": "template <class T> T twice(T x) { return x + x; }\nint f() { return twice('1'); }\n" },
  },
  {
    name: "a deduced type",
    before: { "a.cpp": "auto f() { return 1; }\nauto x = f();\n" },
    after: { "a.cpp": "auto f() { return 1L; }\nauto x = f();\n" },
  },
  {
    name: "one of two bodies of one name",
    before: { "a.c": "int f(void) { return 1; }\nint f(void) { return 2; }\n" },
    after: { "a.c": "int f(void) { return 3; }\nint f(void) { return 2; }\n" },
  },
  {
    name: "another name of the same vector",
    before: { "a.c": "#include <avr/interrupt.h>\n#define ONE INT0_vect\nISR(INT0_vect) { }\n" },
    after: { "a.c": "#include <avr/interrupt.h>\n#define ONE INT0_vect\nISR(ONE) { }\n" },
  },
];

describe.each([
  ["stays typed around", kept, true],
  ["is typed anew by", typedAnew, false],
] as const)("a unit %s", (_, cases, isKept) => {
  test.each(cases)("$name", async ({ before, after }) => {
    const cache = new ProgramCache();
    const first = await readFiles(before, cache);
    const names = first.units.map(({ typed }) => typed.lasting);
    const second = await readFiles(after, cache);
    expect(second.units.every(({ typed }, index) => typed.lasting === names[index])).toBe(isKept);
    expect(shapeOf(second)).toEqual(shapeOf(await readFiles(after)));
    const back = await readFiles(before, cache);
    expect(shapeOf(back)).toEqual(shapeOf(await readFiles(before)));
  });
});

test("functions whose bodies stay keep them", async () => {
  const cache = new ProgramCache();
  const text = (number: number) => `int f(void) { return ${number}; }\nint g(void) { return f(); }\n`;
  const first = await readFiles({ "a.c": text(1) }, cache);
  const bodies = first.functions.map(({ definition }) => definition);
  const second = await readFiles({ "a.c": text(2) }, cache);
  expect(second.functions).toEqual(first.functions);
  expect(second.functions[0]?.definition).not.toBe(bodies[0]);
  expect(second.functions[1]?.definition).toBe(bodies[1]);
});

/** What a reader sees of a program: each name with what it means, each declaration, all by place. */
function shapeOf(program: Program): unknown {
  const place = ({ first, last }: At) => {
    const { file, start, end } = visibleRange(first, last);
    return `${file}:${start}-${end}`;
  };
  return program.units.map(({ typed, preprocessed }) => ({
    names: typed.references
      .filter(({ token }) => !token.file.startsWith("<"))
      .map(({ token, target }) => [token.text, token.file, token.start, token.macro?.name, target.name])
      .sort(),
    functions: typed.functions
      .filter(({ standIn }) => !standIn)
      .map((symbol) => [
        symbol.qualifiedName,
        symbol.vector,
        place(symbol.declarationAt),
        symbol.declarations.map(place),
        symbol.definition && place(symbol.definition.body.at),
        symbol.definition?.parameters.map(({ name, at }) => [name, place(at)]),
      ]),
    variables: [...typed.variables, ...typed.locals]
      .filter(({ at }) => !at.first.file.startsWith("<"))
      .map(({ name, type, at }) => [name, type.kind === "array" ? type.length : type.kind, place(at)])
      .sort(),
    problems: typed.problems,
    tokens: preprocessed.tokens
      .filter(({ file }) => !file.startsWith("<"))
      .map(({ text, file, start }) => `${text} ${file}:${start}`),
  }));
}
