import { expect, test } from "vitest";
import { loadGrammar } from "../../src-core/reader/syntax/load-grammar.ts";
import { type Compiler, printed, rewritten } from "./compile.ts";
import { chance, declarations, randomExpression } from "./random-expressions.ts";

const grammar = await loadGrammar();
const perProgram = 400;

const compilers: readonly Compiler[] = [
  { command: "gcc", flags: ["-std=gnu11"], language: "c" },
  { command: "g++", flags: ["-std=gnu++14", "-fpermissive"], language: "c++" },
];

/** One function per expression; the program prints what each gives and what it leaves in `m`. */
function functions(expressions: readonly string[]): string {
  return expressions.map((text, index) => `static long long e${index}(void) { return ${text}; }`).join("\n");
}

function main(count: number): string {
  const calls = Array.from(
    { length: count },
    (_, index) => `reset(); printf("%lld ", e${index}()); printf("%d\\n", m);`,
  );
  return `int printf(const char *, ...);\nint main(void) { ${calls.join("\n")} return 0; }`;
}

const cases = compilers.flatMap((compiler) => [1, 2, 3].map((seed) => ({ compiler, seed })));

test.each(cases)("$compiler.command groups as the tree does, seed $seed", ({ compiler, seed }) => {
  const next = chance(seed);
  const expressions = Array.from({ length: perProgram }, () => randomExpression(next));
  const written = `${declarations}\n${functions(expressions)}`;
  const { source, syntax } = rewritten(grammar, compiler.language, written);
  expect(syntax.notUnderstood).toEqual([]);
  const end = main(perProgram).replace(
    "int printf",
    compiler.language === "c" ? "int printf" : 'extern "C" int printf',
  );
  const asWritten = printed(compiler, `${written}\n${end}`).split("\n");
  const asRead = printed(compiler, `${source}\n${end}`).split("\n");
  const wrong = expressions.filter((_, index) => asWritten[index] !== asRead[index]);
  expect(asWritten.length).toBe(perProgram + 1);
  expect(wrong).toEqual([]);
});
