import { describe, expect, it } from "vitest";
import { readFacts } from "../read-units.ts";

const MEANS = "@wire means ps2.request-hold";
const ENCODES = "@wire encodes two-button from x=dx into out";

/** `kind name` of everything the notes of one file belong to, then the messages of problems. */
function attached(text: string, file = "a.c"): readonly string[] {
  const facts = readFacts({ [file]: text });
  return [
    ...facts.attached.map(({ targets }) =>
      targets.map(({ target }) => `${target.kind} ${target.name}`).join(", "),
    ),
    ...facts.problems.map((problem) => `${problem.rule}: ${problem.message}`),
  ];
}

describe("the declaration below", () => {
  it.each([
    ["a define", `// ${MEANS}\n#define HOLD 100\n`, "macro HOLD"],
    ["a guarded define", `// ${MEANS}\n#ifndef HOLD\n#define HOLD 100\n#endif\n`, "macro HOLD"],
    [
      "the branch that is read",
      `// ${MEANS}\n#ifdef FAST\n#define HOLD 50\nint fast;\n#else\n#define HOLD 100\n#endif\n`,
      "macro HOLD",
    ],
    ["a define behind other comments", `// ${MEANS}\n/* as measured */\n\n#define HOLD 100\n`, "macro HOLD"],
    ["a variable", `/* ${MEANS} */\nstatic const unsigned hold = 100;\nint other = 1;\n`, "variable hold"],
    [
      "a variable in a function",
      `void f(void) {\n  // ${MEANS}\n  const int hold = 100;\n}\n`,
      "variable hold",
    ],
    ["an enumerator", `enum {\n  LOW = 1,\n  // ${MEANS}\n  HOLD = 100,\n  LAST\n};\n`, "enumerator HOLD"],
    ["the only enumerator of an enum", `// ${MEANS}\nenum { HOLD = 100 };\n`, "enumerator HOLD"],
    [
      "a constant from a macro",
      `#define CONST static const int\n// ${MEANS}\nCONST hold = 100;\n`,
      "variable hold",
    ],
    ["a function", `// ${ENCODES}\nvoid build(int dx, char *out) { *out = dx; }\n`, "function build"],
    ["a prototype", `// ${ENCODES}\nvoid build(int dx, char *out);\n`, "function build"],
    [
      "a function whose body declares more",
      `// ${ENCODES}\nstatic void build(int dx, char *out)\n{\n  int a = dx;\n  *out = a;\n}\nint later;\n`,
      "function build",
    ],
  ])("%s in C", (_, text, target) => {
    expect(attached(text)).toEqual([target]);
  });

  it.each([
    ["constexpr", `// ${MEANS}\nconstexpr unsigned hold = 100;\n`, "variable hold"],
    ["inside extern C", `// ${MEANS}\nextern "C" {\nconst int hold = 100;\n}\n`, "variable hold"],
    ["inside a namespace", `// ${MEANS}\nnamespace ferry {\nconst int hold = 100;\n}\n`, "variable hold"],
    ["an enum class", `enum class Time {\n  // ${MEANS}\n  hold = 100,\n};\n`, "enumerator hold"],
    [
      "a static member",
      `struct Port {\n  // ${MEANS}\n  static const int hold = 100;\n  int a;\n};\n`,
      "variable hold",
    ],
    [
      "a member function",
      `struct Port {\n  // @wire encodes two-button from x=dx into send\n  void build(int dx);\n  void send(int b);\n};\n`,
      "function build",
    ],
    [
      "a member function outside its class",
      `struct Port { int dx; void build(char *out); };\n// ${ENCODES}\nvoid Port::build(char *out) { *out = dx; }\n`,
      "function build",
    ],
  ])("%s in C++", (_, text, target) => {
    expect(attached(text, "a.cpp")).toEqual([target]);
  });

  it("is found for each note of a comment", () => {
    const text = `/* ${ENCODES}\n * @wire try right=12 */\nvoid build(int dx, char *out);\n`;
    expect(attached(text)).toEqual(["function build", "function build"]);
  });

  it("is one target for each unit that includes it", () => {
    const header = `#pragma once\n// ${MEANS}\n#define HOLD 100\n`;
    const facts = readFacts({ "a.h": header, "a.c": '#include "a.h"\n', "b.c": '#include "a.h"\n' });
    expect(facts.problems).toEqual([]);
    expect(facts.attached.map(({ targets }) => targets.length)).toEqual([2]);
  });

  it("is one for the unit that defines what the header declares and for one that only calls it", () => {
    const header = `#pragma once\n// ${ENCODES}\nvoid build(int dx, char *out);\n`;
    const facts = readFacts({
      "a.h": header,
      "a.c": '#include "a.h"\nvoid build(int dx, char *out) { *out = dx; }\n',
      "b.c": '#include "a.h"\n',
    });
    expect(facts.problems).toEqual([]);
    expect(facts.attached.map(({ targets }) => targets.length)).toEqual([2]);
  });
});

describe("the declaration on the line", () => {
  it.each([
    ["a define", `#define LOW 1\n#define HOLD 100 // ${MEANS}\n#define LAST 2\n`, "macro HOLD"],
    ["a variable", `int a = 1;\nconst int hold = 100; // ${MEANS}\nint b = 2;\n`, "variable hold"],
    ["a variable over lines", `const int hold =\n    100; // ${MEANS}\nint b = 2;\n`, "variable hold"],
    ["an enumerator", `enum { LOW = 1,\n  HOLD = 100, // ${MEANS}\n  LAST };\n`, "enumerator HOLD"],
    ["the last enumerator", `enum { LOW = 1,\n  HOLD = 100 // ${MEANS}\n};\n`, "enumerator HOLD"],
    [
      "a function",
      `int a;\nvoid build(int dx, char *out) { // ${ENCODES}\n  *out = dx;\n}\n`,
      "function build",
    ],
  ])("%s", (_, text, target) => {
    expect(attached(text)).toEqual([target]);
  });
});

describe("notes that belong to nothing", () => {
  const constant = "note/unattached: `means` belongs to a constant below it or on its line, but";
  const fn = "note/unattached: `encodes` belongs to a function below it or on its line, but";

  it.each([
    ["the end of the file", `int a;\n// ${MEANS}\n`, `${constant} nothing follows it`],
    ["the end of a block", `void f(void) {\n  // ${MEANS}\n}\n`, `${constant} nothing follows it`],
    ["an include", `// ${MEANS}\n#include "b.h"\n#define A 1\n`, `${constant} \`#include\` is none`],
    ["a function", `// ${MEANS}\nvoid f(void);\n`, `${constant} \`f\` is a function`],
    ["a variable", `// ${ENCODES}\nint a = 1;\n`, `${fn} \`a\` is a variable`],
    ["a macro", `// ${ENCODES}\n#define A 1\n`, `${fn} \`A\` is a macro`],
    [
      "a statement",
      `void f(int a) {\n  // ${MEANS}\n  a = 1;\n}\n`,
      `${constant} what stands there declares none`,
    ],
    ["a struct", `// ${MEANS}\nstruct s { int a; };\n`, `${constant} what stands there declares none`],
    [
      "another statement on the line",
      `int f(int a) {\n  return a; // ${MEANS}\n}\n`,
      `${constant} what stands there declares none`,
    ],
  ])("before %s", (_, text, message) => {
    expect(attached(text)).toEqual([message]);
  });

  it("rest in groups that the preprocessor skips", () => {
    expect(attached(`#if 0\n// ${MEANS}\nint hold = 100;\n// ${MEANS}\n#define HOLD 1\n#endif\n`)).toEqual(
      [],
    );
  });

  it("rest at the end of a group that is skipped, and are told of in one that is not", () => {
    expect(attached(`#if 0\n// ${MEANS}\n#endif\nint a;\n`)).toEqual([]);
    expect(attached(`#if 0\nint a;\n#else\n// ${MEANS}\n#endif\nint a;\n`)).toEqual([]);
    expect(attached(`#if 1\nint a;\n// ${MEANS}\n#endif\nint b;\n`)).toEqual([
      `${constant} nothing follows it`,
    ]);
  });

  it("are told where two declarations share the line", () => {
    expect(attached(`// ${MEANS}\nint a = 1, b = 2;\n`)).toEqual([
      "note/mismatch: this note could mean `a` and `b`: give the one it is for a line of its own",
    ]);
  });
});

describe("notes that contradict the code", () => {
  it.each([
    [
      "a macro with parameters",
      `// ${MEANS}\n#define HOLD(x) (x)\n`,
      "`means` needs a constant value, but `HOLD` takes parameters",
    ],
    [
      "an empty macro",
      `// ${MEANS}\n#define HOLD\n`,
      "`means` needs a constant value, but `HOLD` is defined as nothing",
    ],
    [
      "a variable without a value",
      `// ${MEANS}\nint hold;\n`,
      "`means` needs a constant value, but `hold` is given no value where it is declared",
    ],
    [
      "a variable that is computed later",
      `int measure(void);\nvoid f(void) {\n  int hold = measure(); // ${MEANS}\n}\n`,
      "`means` needs a constant value, but `hold` gets its value when it runs",
    ],
    [
      "a field",
      `struct s {\n  // ${MEANS}\n  int hold;\n};\n`,
      "`means` needs a constant value, but `hold` is a field, which each object has for itself",
    ],
    [
      "a parameter that is not there",
      `// @wire encodes two-button from x=dz into out\nvoid build(int dx, char *out);\n`,
      "`build` has no parameter `dz`; known: `dx` and `out`",
    ],
    [
      "a misspelt parameter",
      `// @wire encodes two-button from x=-deltaZ into out\nvoid build(int deltaX, char *out);\n`,
      "`build` has no parameter `deltaZ`; did you mean `deltaX`?",
    ],
    [
      "a target that is not there",
      `// @wire encodes two-button from x=dx into buffer\nvoid build(int dx, char *out);\n`,
      "`build` has no parameter `buffer`; known: `dx` and `out`",
    ],
    // ISO C11 7.20.1.1: `uint8_t` has exactly 8 bits; 6.7.2.1p10: a bit-field has the bits that it says.
    [
      "a bit beyond a byte",
      `typedef unsigned char uint8_t;\n// @wire encodes two-button from left=b.0 right=b.9 into out\nvoid build(uint8_t b, char *out);\n`,
      "`b` has bits 0 to 7, so there is no bit 9",
    ],
    [
      "a bit beyond a bit-field",
      `struct held { unsigned left : 1, others : 3; };\n// @wire encodes two-button from left=h.others.2 right=h.left.1 into out\nvoid build(struct held *h, char *out);\n`,
      "`h.left` is one bit, so there is no bit 1",
    ],
    [
      "a member that is not there",
      `struct movement { int dx, dy; };\n// @wire decodes ps2-standard from b into x=out.dx y=out.dz\nvoid take(char *b, struct movement *out);\n`,
      "`movement` has no member `dz`; known: `dx` and `dy`",
    ],
    [
      "bytes that are not there",
      `// @wire decodes ps2-standard from buf into x=dx\nvoid take(char *bytes, int *dx);\n`,
      "`take` has no parameter `buf`; known: `bytes` and `dx`",
    ],
  ])("%s", (_, text, message) => {
    expect(readFacts({ "a.c": text }).problems).toMatchObject([{ rule: "note/mismatch", message }]);
  });

  it("mends a misspelt parameter behind its sign", () => {
    const text = "// @wire encodes two-button from x=-deltaZ into out\nvoid build(int deltaX, char *out);\n";
    const [problem] = readFacts({ "a.c": text }).problems;
    const [edit] = problem?.fixes[0]?.edits ?? [];
    expect(text.slice(edit?.span.start, edit?.span.end)).toBe("deltaZ");
    expect(edit?.text).toBe("deltaX");
  });

  it.each([
    ["a global", "int dx; char out[3];\n// @wire encodes two-button from x=dx into out\nvoid build(void);\n"],
    [
      "a function that takes the bytes",
      "void send(char b);\n// @wire encodes two-button from x=dx into send\nvoid build(int dx);\n",
    ],
    [
      "members through a pointer",
      "struct m { int dx; };\n// @wire decodes ps2-standard from b into x=out->dx left=flags.0\nvoid take(char *b, struct m *out, int *flags);\n",
    ],
    ["a value known at compile time", `#define US 1\n// ${MEANS}\nconst int hold = 100 * US;\n`],
    ["a const copied from a const", `const int base = 100;\n// ${MEANS}\nconst int hold = base;\n`],
    ["external pull-ups beside internal ones", "// @wire ps2 clock=2 pullups=external\nint a;\n"],
  ])("says nothing about %s", (_, text) => {
    expect(readFacts({ "a.c": text }).problems).toEqual([]);
  });
});

describe("notes about the project", () => {
  it("rest in branches that are skipped", () => {
    const text =
      "#if 1\n// @wire board atmega328p\nint a;\n#else\n// @wire board attiny85\nint b;\n#endif\n// @wire ps2 clock=2\n";
    const { wires, problems } = readFacts({ "a.c": text });
    expect(problems).toEqual([]);
    expect(wires.board.chip?.value).toBe("atmega328p");
    expect(wires.ps2.clock?.value).toBe("2");
  });

  it("count in headers with an include guard, and where a branch holds nothing else", () => {
    const header = "#ifndef BOARD_H\n#define BOARD_H\n// @wire board atmega328p\nint a;\n#endif\n";
    const main = '#include "board.h"\n#ifdef X\n// @wire ps2 clock=2\n#endif\n';
    const { wires } = readFacts({ "board.h": header, "a.c": main });
    expect(wires.board.chip?.value).toBe("atmega328p");
    expect(wires.ps2.clock?.value).toBe("2");
  });
});
