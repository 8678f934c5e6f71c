import { describe, expect, test } from "vitest";
import { evaluate } from "../../../../src-core/reader/constants/evaluate.ts";
import { expressionAt } from "../../../../src-core/reader/program/expression-queries.ts";
import { definitionOf, referencesTo, symbolAt } from "../../../../src-core/reader/program/symbol-queries.ts";
import { marked, readFiles } from "./read-files.ts";

async function atCursor(source: string, others: Readonly<Record<string, string>> = {}, name = "main.c") {
  const { text, offset } = marked(source);
  const program = await readFiles({ [name]: text, ...others });
  const unit = program.units.find(({ mains }) => mains.includes(name));
  if (unit === undefined) throw new Error("no unit");
  const shown = (span: { start: number; end: number } | undefined) =>
    span && text.slice(span.start, span.end);
  return { program, unit, text, offset, file: name, shown };
}

describe("symbols by place", () => {
  test.each([
    ["int ready; void f(void) { rea$|$dy = 1; }", "ready"],
    ["int ready; void f(void) { ready$|$ = 1; }", "ready"],
    ["int re$|$ady;", "ready"],
    ["struct p { int x; }; struct p q; void f(void) { q.$|$x = 1; }", "x"],
    ["enum e { A, B }; int v = $|$B;", "B"],
    ["typedef unsigned char byte; by$|$te v;", "byte"],
    ["void send(int c); void f(void) { se$|$nd(5); }", "send"],
    ["int buf[4]; int n = sizeof(b$|$uf);", "buf"],
    ["#define FIRST buf[0]\nint buf[4]; void f(void) { FI$|$RST = 1; }", "buf"],
    ["#define SET(x) ((x) = 1)\nint a; void f(void) { SET($|$a); }", "a"],
  ])("%s", async (source, name) => {
    const { unit, file, offset } = await atCursor(source);
    expect(symbolAt(unit, file, offset)?.target.name).toBe(name);
  });

  test("no symbol on keywords and numbers", async () => {
    const { unit, file, offset } = await atCursor("int x = 1$|$2;");
    expect(symbolAt(unit, file, offset)).toBeUndefined();
  });

  test("the definition may stand in another file", async () => {
    const { program, unit, file, offset } = await atCursor("void send(int); void f(void) { s$|$end(1); }", {
      "port.c": "void send(int c) { }\n",
    });
    const found = symbolAt(unit, file, offset);
    expect(found && definitionOf(program, found.target)).toEqual({ file: "port.c", start: 5, end: 9 });
    expect(found && referencesTo(program, found.target)).toHaveLength(3);
  });

  test("what a built-in header declares has no place to go to", async () => {
    const { program, unit, file, offset } = await atCursor(
      "void setup() { pin$|$Mode(2, OUTPUT); }\nvoid loop() {}\n",
      {},
      "a.ino",
    );
    const found = symbolAt(unit, file, offset);
    expect(found?.target.name).toBe("pinMode");
    expect(found && definitionOf(program, found.target)).toBeUndefined();
  });
});

describe("expressions by place", () => {
  test.each([
    ["int x = 60 * $|$1000;", "1000", 1000n],
    ["int x = 60 $|$* 1000;", "60 * 1000", -5536n],
    ["unsigned char x = 8$|$32;", "832", 832n],
    ["#define BAUD 1200UL\nlong x = 2 * BA$|$UD;", "BAUD", 1200n],
    [
      "#define DIVISOR(hz, baud) ((hz) / 16 / (baud) - 1)\nint x = DIV$|$ISOR(16000000UL, 1200);",
      "DIVISOR(16000000UL, 1200)",
      832n,
    ],
    [
      "#define DIVISOR(hz, baud) ((hz) / 16 / (baud) - 1)\nint x = DIVISOR(16000000UL, 12$|$00);",
      "1200",
      1200n,
    ],
    ["int f(int); void g(void) { if (f(4$|$0)) { } }", "40", 40n],
    ["int x = (1 << 3) | (1 $|$<< 5);", "1 << 5", 32n],
  ])("%s", async (source, text, value) => {
    const { unit, file, offset, shown } = await atCursor(source);
    const found = expressionAt(unit, file, offset);
    expect(shown(found?.span)).toBe(text);
    expect(found && evaluate(found.expression, unit.typed.model)).toMatchObject({ value });
  });

  test("a register is the whole of its macro", async () => {
    const { unit, file, offset, shown } = await atCursor(
      "#include <avr/io.h>\nvoid f(void) { UBR$|$R0 = 832; }\n",
    );
    const found = expressionAt(unit, file, offset);
    expect(found?.expression.kind).toBe("dereference");
    expect(shown(found?.span)).toBe("UBRR0");
  });

  test("none outside expressions", async () => {
    const { unit, file, offset } = await atCursor("int $|$x = 5;");
    expect(expressionAt(unit, file, offset)).toBeUndefined();
  });
});
