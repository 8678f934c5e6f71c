import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src-core/reader/constants/evaluate.ts";
import type { TypedExpression } from "../../../src-core/reader/typed/nodes.ts";
import { avrModel, ilp32Model } from "../../../src-core/reader/types/data-models.ts";
import { sizeOf } from "../../../src-core/reader/types/layout.ts";
import type { DataModel, Type } from "../../../src-core/reader/types/types.ts";
import { randomSeed } from "../../random-seed.ts";
import { expressionsIn } from "../../src-core/reader/typed/type-source.ts";
import { avrC, avrCpp, type Compiler, ilp32C } from "./avr-compiler.ts";
import { cExpressions, cFloating, cPrelude } from "./c-cases.ts";
import { type CompiledConstant, compileConstants, compileFloating, constantOnes } from "./compiled.ts";
import { cppExpressions, cppPrelude } from "./cpp-cases.ts";
import { expressionFrom, randomFrom } from "./generated.ts";

/** The standard's own name of a type, whatever typedef named it. */
function spellingOf(type: Type): string {
  if (type.kind === "floating") return type.rank;
  if (type.kind !== "integer" || /^(char\d+_t|wchar_t)$/.test(type.name)) return "other";
  if (type.plainChar === true || type.rank === "bool") return type.rank;
  const sign = type.signed ? (type.rank === "char" ? "signed " : "") : "unsigned ";
  return `${sign}${type.rank}`;
}

/** What the reader says, in the compiler's words; enumerations of C++ and what else has no number are `other`. */
function readConstant(
  expression: TypedExpression,
  model: DataModel,
  language: "c" | "c++",
): CompiledConstant | string {
  const value = evaluate(expression, model);
  const { type } = expression;
  const size = sizeOf(type, model);
  const kept = type.kind === "enumeration" && language === "c" ? type.enumeration.underlying : type;
  const spelt = spellingOf(kept);
  if (value.kind === "unknown" || size === undefined)
    return value.kind === "unknown" ? value.reason : "no size";
  if (value.kind === "address") return { value: value.offset, type: spelt, size };
  const number = value.kind === "integer" ? value.value : BigInt(Math.trunc(value.value));
  return { value: BigInt.asIntN(64, number), type: spelt, size };
}

async function compare(
  compiler: Compiler,
  prelude: string,
  expressions: readonly string[],
  model: DataModel,
): Promise<void> {
  const language = compiler.extension === "c" ? "c" : "c++";
  const compiled = compileConstants(compiler, prelude, expressions);
  const typed = await expressionsIn(prelude, expressions, language, model);
  expect(typed).toHaveLength(expressions.length);
  const ours = typed.map((expression, index) => [
    expressions[index],
    readConstant(expression, model, language),
  ]);
  expect(ours).toEqual(expressions.map((expression, index) => [expression, compiled[index]]));
}

describe("C constant expressions as avr-gcc -mmcu=atmega328p computes them", () => {
  test.each(Object.keys(cExpressions))("%s", async (group) => {
    await compare(avrC, cPrelude, cExpressions[group] ?? [], avrModel);
  });

  test("floating ones, in 32 bits", async () => {
    const compiled = compileFloating(avrC, cFloating);
    const typed = await expressionsIn("", cFloating);
    const ours = typed.map((expression) => {
      const value = evaluate(expression, avrModel);
      return value.kind === "floating" ? value.value : value.kind;
    });
    expect(ours).toEqual(compiled);
  });
});

describe("C++ constant expressions as avr-g++ -mmcu=atmega328p computes them", () => {
  test.each(Object.keys(cppExpressions))("%s", async (group) => {
    await compare(avrCpp, cppPrelude, cppExpressions[group] ?? [], avrModel);
  });
});

const seed = randomSeed("CONSTANTS_SEED", 1);

describe(`generated constant expressions (CONSTANTS_SEED=${seed})`, () => {
  const random = randomFrom(seed);
  const expressions = Array.from({ length: 400 }, (_, index) => expressionFrom(random, 1 + (index % 4)));

  test("avr-gcc", async () => {
    const constant = constantOnes(avrC, expressions);
    expect(constant.length).toBeGreaterThan(300);
    await compare(avrC, "", constant, avrModel);
  });

  test("avr-g++", async () => {
    const spelt = expressions.map((expression) => expression.replaceAll("_Bool", "bool"));
    await compare(avrCpp, "", spelt, avrModel);
  });

  test("gcc for 32 bits", async () => {
    const constant = constantOnes(ilp32C, expressions);
    expect(constant.length).toBeGreaterThan(300);
    await compare(ilp32C, "", constant, ilp32Model);
  });
});

test("the hand-picked classes hold more than 300 expressions", () => {
  const count = [...Object.values(cExpressions), ...Object.values(cppExpressions)].flat().length;
  expect(count).toBeGreaterThan(300);
});
