import type {
  ChunkSyntax,
  Declaration,
  Expression,
  Statement,
} from "../../../../src-core/reader/syntax/nodes.ts";
import { parseUnit } from "../../../../src-core/reader/syntax/parse-unit.ts";
import { SyntaxCache } from "../../../../src-core/reader/syntax/syntax-cache.ts";
import { loadGrammar } from "./load-grammar.ts";
import { printDeclaration, printExpression, printStatement } from "./print.ts";
import { tokenize } from "./tokenize.ts";

export type Language = "c" | "c++";

const grammar = await loadGrammar();

/** The tree of a text that is read as one chunk. */
export function read(language: Language, text: string): ChunkSyntax {
  const [parsed] = parseUnit([{ tokens: tokenize(text) }], language, grammar, new SyntaxCache());
  if (parsed === undefined) throw new Error("no chunk");
  return parsed.syntax;
}

/** Its declarations, each as an s-expression. */
export function trees(language: Language, text: string): readonly string[] {
  return read(language, text).declarations.map(printDeclaration);
}

/** The last declaration alone: what is before it only gives names their meaning. */
export function tree(language: Language, text: string): string {
  return trees(language, text).at(-1) ?? "";
}

function bodyOf(declaration: Declaration | undefined): readonly Statement[] {
  if (declaration?.kind !== "function") throw new Error(`no function but ${declaration?.kind}`);
  return declaration.body.statements;
}

/** The statements of a function body in which `text` stands; `before` goes ahead of the function. */
export function statements(language: Language, text: string, before = ""): readonly string[] {
  const { declarations } = read(language, `${before} void f(void) { ${text} }`);
  return bodyOf(declarations.at(-1)).map(printStatement);
}

export function expressionTree(language: Language, text: string, before = ""): Expression {
  const { declarations } = read(language, `${before} void f(void) { return ${text}; }`);
  const [only] = bodyOf(declarations.at(-1));
  if (only?.kind !== "return" || only.value === undefined) throw new Error(`no expression: ${text}`);
  return only.value;
}

/** One expression, read where nothing else than an expression can stand. */
export function expression(language: Language, text: string, before = ""): string {
  return printExpression(expressionTree(language, text, before));
}
