import { type Compiler, faultyLines, sectionsOf } from "./avr-compiler.ts";
import { cppTypeCode, cppTypeCodes, cTypeCode, typeCodes } from "./type-codes.ts";

/** What the compiler says of one integer constant expression. */
export interface CompiledConstant {
  /** As a 64-bit signed number. */
  readonly value: bigint;
  /** Name of the type, or `other`. */
  readonly type: string;
  /** Bytes. */
  readonly size: number;
}

/** Compiles expressions into tables of constants and reads the tables out of the object. */
export function compileConstants(
  compiler: Compiler,
  prelude: string,
  expressions: readonly string[],
): readonly CompiledConstant[] {
  const isC = compiler.extension === "c";
  const typeCode = isC ? cTypeCode : cppTypeCode;
  const table = (type: string, name: string, entry: (expression: string) => string) =>
    `extern const ${type} ${name}[]; const ${type} ${name}[] __attribute__((section(".${name}"), used)) = {\n` +
    `${expressions.map((expression) => `  ${entry(expression)}`).join(",\n")}\n};`;
  const text = [
    prelude,
    isC ? "" : cppTypeCodes,
    table("long long", "values", (expression) => `(long long)(${expression})`),
    table("unsigned char", "types", typeCode),
    table("unsigned char", "sizes", (expression) => `sizeof(${expression})`),
  ].join("\n");
  const [values, types, sizes] = sectionsOf(compiler, text, [".values", ".types", ".sizes"]);
  if (values === undefined || types === undefined || sizes === undefined) throw new Error("no sections");
  return expressions.map((_, index) => ({
    value: values.readBigInt64LE(index * 8),
    type: typeCodes[types.readUInt8(index)] ?? "other",
    size: sizes.readUInt8(index),
  }));
}

/** The bits of floating constant expressions, converted to `double` (32 bits on AVR). */
export function compileFloating(compiler: Compiler, expressions: readonly string[]): readonly number[] {
  const text = `const double values[] __attribute__((section(".values"), used)) = { ${expressions.join(", ")} };`;
  const [values] = sectionsOf(compiler, text, [".values"]);
  if (values === undefined) throw new Error("no section");
  return expressions.map((_, index) => values.readFloatLE(index * 4));
}

/** Those of the expressions that the compiler takes for constants: C makes none of comparing an overflow. */
export function constantOnes(compiler: Compiler, expressions: readonly string[]): readonly string[] {
  const text = expressions
    .map((expression, index) => `const long long c${index} = (long long)(${expression});`)
    .join("\n");
  const faulty = faultyLines(compiler, text);
  return expressions.filter((_, index) => !faulty.has(index));
}
