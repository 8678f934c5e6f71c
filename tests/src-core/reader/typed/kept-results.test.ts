import { expect, test } from "vitest";
import { evaluate } from "../../../../src-core/reader/constants/evaluate.ts";
import type { Program } from "../../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../../src-core/reader/program/program-cache.ts";
import { KeptResults } from "../../../../src-core/reader/typed/kept-results.ts";
import type { FunctionSymbol } from "../../../../src-core/reader/typed/nodes.ts";
import { readFiles } from "../program/read-files.ts";

const text = (ofF: number, ofH: number) =>
  `int f(void) { return ${ofF}; }\nint g(void) { return f(); }\nint h(void) { return ${ofH}; }\n`;

/** Numbers of statements, as something that is found by asking for bodies. */
class Counting {
  finds = 0;
  readonly #alone = new KeptResults<FunctionSymbol, number>();
  readonly #together = new KeptResults<FunctionSymbol, number>();

  alone(program: Program, symbol: FunctionSymbol): number {
    return this.#alone.get(program.lasting, symbol, () => {
      this.finds += 1;
      return symbol.definition?.body.statements.length ?? 0;
    });
  }

  /** Of both: asks for the second body by way of another kept result. */
  together(program: Program, one: FunctionSymbol, other: FunctionSymbol): number {
    return this.#together.get(program.lasting, one, () => {
      this.finds += 1;
      return (one.definition?.body.statements.length ?? 0) + this.alone(program, other);
    });
  }
}

const named = (program: Program, name: string): FunctionSymbol => {
  const found = program.functions.find((symbol) => symbol.name === name);
  if (found === undefined) throw new Error(`no function ${name}`);
  return found;
};

test("a result stands until a body changes that finding it asked for, by way of another result, too", async () => {
  const cache = new ProgramCache();
  const counting = new Counting();
  const together = (program: Program) => counting.together(program, named(program, "g"), named(program, "f"));
  const finds = async (source: string, ask: (program: Program) => number) => {
    const program = await readFiles({ "a.c": source }, cache);
    const before = counting.finds;
    ask(program);
    return counting.finds - before;
  };
  expect(await finds(text(1, 1), together)).toBe(2);
  expect(await finds(text(1, 1), together)).toBe(0);
  expect(await finds(text(1, 2), together)).toBe(0);
  expect(await finds(text(2, 2), together)).toBe(2);
  expect(await finds(`${text(2, 2)}int x;\n`, together)).toBe(2);
});

test("a constant follows the function that its initialiser calls", async () => {
  const cache = new ProgramCache();
  const twice = async (rate: number) => {
    const source = `constexpr long rate() { return ${rate}; }\nconst long baud = rate();\nconst long twice = baud + baud;\n`;
    const program = await readFiles({ "a.cpp": source }, cache);
    const variable = program.variables.find(({ name }) => name === "twice");
    if (variable?.initializer?.kind !== "value") throw new Error("no constant");
    return evaluate(variable.initializer.value, program.model);
  };
  expect(await twice(1200)).toMatchObject({ value: 2400n });
  expect(await twice(2400)).toMatchObject({ value: 4800n });
});
