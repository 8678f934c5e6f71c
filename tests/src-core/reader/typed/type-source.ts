import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { ProgramCache } from "../../../../src-core/reader/program/program-cache.ts";
import { readUnit } from "../../../../src-core/reader/program/read-unit.ts";
import { hostOfFiles } from "../../../../src-core/reader/source-host.ts";
import { createGrammar, type Grammar } from "../../../../src-core/reader/syntax/grammar/grammar.ts";
import type {
  FunctionSymbol,
  TypedExpression,
  TypedUnit,
  Variable,
} from "../../../../src-core/reader/typed/nodes.ts";
import { avrModel } from "../../../../src-core/reader/types/data-models.ts";
import type { DataModel } from "../../../../src-core/reader/types/types.ts";

const require = createRequire(import.meta.url);
let loaded: Promise<Grammar> | undefined;

/** The grammar of the installed packages, loaded once. */
export function grammar(): Promise<Grammar> {
  loaded ??= createGrammar({
    runtimeWasm: readFileSync(require.resolve("web-tree-sitter/web-tree-sitter.wasm")),
    grammarWasm: readFileSync(require.resolve("tree-sitter-cpp/tree-sitter-cpp.wasm")),
  });
  return loaded;
}

/** Reads one file without any header. */
export async function typeSource(
  source: string,
  language: "c" | "c++" = "c",
  model: DataModel = avrModel,
): Promise<TypedUnit> {
  const main = language === "c" ? "main.c" : "main.cpp";
  return readUnit(
    { mains: [main], language, prelude: [] },
    {
      host: hostOfFiles({ [main]: source }),
      defines: {},
      includePaths: [],
      standIns: () => undefined,
      model,
      grammar: await grammar(),
      cache: new ProgramCache(),
    },
  ).typed;
}

/** Types expressions in a function behind the declarations; each follows a comma, so that it can be nothing else. */
export async function expressionsIn(
  declarations: string,
  expressions: readonly string[],
  language: "c" | "c++" = "c",
  model: DataModel = avrModel,
): Promise<readonly TypedExpression[]> {
  const body = expressions.map((expression) => `0, (${expression});`).join("\n");
  const unit = await typeSource(`${declarations}\nvoid probe_(void) {\n${body}\n}\n`, language, model);
  const statements = functionNamed(unit, "probe_").definition?.body.statements ?? [];
  return statements.map((statement) => {
    if (statement.kind !== "expression" || statement.expression.kind !== "comma") {
      throw new Error(`${statement.kind} instead of an expression`);
    }
    return statement.expression.right;
  });
}

export async function expressionIn(
  declarations: string,
  expression: string,
  language: "c" | "c++" = "c",
  model: DataModel = avrModel,
): Promise<TypedExpression> {
  const [only] = await expressionsIn(declarations, [expression], language, model);
  if (only === undefined) throw new Error(`nothing was read of ${expression}`);
  return only;
}

export function variableNamed(unit: TypedUnit, name: string): Variable {
  const found = unit.variables.find((variable) => variable.name === name);
  if (found === undefined) throw new Error(`no variable ${name}`);
  return found;
}

export function functionNamed(unit: TypedUnit, name: string): FunctionSymbol {
  const found = unit.functions.find((symbol) => symbol.name === name);
  if (found === undefined) throw new Error(`no function ${name}`);
  return found;
}
