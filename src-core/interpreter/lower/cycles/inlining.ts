import type { Program } from "../../../reader/program/program.ts";
import type { FunctionSymbol, TypedExpression } from "../../../reader/typed/nodes.ts";
import { walkStatement, walkUnit } from "../../../reader/typed/walk.ts";

/** Nodes of a body that takes no more room than the call of it. */
const smallBody = 12;

/**
 * Functions whose code avr-gcc -Os puts in the place of their calls: those that are hardly longer than a call, and
 * those that are known in one unit only and called once ("-finline-small-functions" and
 * "-finline-functions-called-once" in the manual of gcc).
 */
export function inliningOf(program: Program): (symbol: FunctionSymbol) => boolean {
  let calls: ReadonlyMap<FunctionSymbol, number> | undefined;
  const known = new Map<FunctionSymbol, boolean>();
  const decide = (symbol: FunctionSymbol): boolean => {
    const { definition, attributes, vector } = symbol;
    const has = (name: string): boolean =>
      attributes.some((each) => each.name.replaceAll("_", "") === name.replaceAll("_", ""));
    if (definition === undefined || symbol.standIn || vector !== undefined || has("noinline")) return false;
    if (has("always_inline")) return true;
    calls ??= callsIn(program);
    const count = calls.get(symbol) ?? 0;
    if (isLocal(symbol) && count === 1) return true;
    return sizeOf(symbol, smallBody) <= smallBody;
  };
  return (symbol) => {
    const meant = program.definitionOf(symbol) ?? symbol;
    let inlined = known.get(meant);
    if (inlined === undefined) {
      inlined = decide(meant);
      known.set(meant, inlined);
    }
    return inlined;
  };
}

/** Not known to other units, or made anew by each that needs it: nothing is lost where no function is left. */
function isLocal(symbol: FunctionSymbol): boolean {
  if (symbol.linkageName === undefined) return true;
  return symbol.memberOf !== undefined && symbol.declarations.length === 1;
}

/** How often each function is named; as often as is called once, where that is by a call. */
function callsIn(program: Program): ReadonlyMap<FunctionSymbol, number> {
  const calls = new Map<FunctionSymbol, number>();
  const count = (symbol: FunctionSymbol): void => {
    const meant = program.definitionOf(symbol) ?? symbol;
    calls.set(meant, (calls.get(meant) ?? 0) + 1);
  };
  for (const { typed } of program.units)
    walkUnit(typed, {
      expression: (expression) => {
        if (expression.kind === "function") count(expression.function);
        if (expression.kind === "method-call") count(expression.method);
        return true;
      },
    });
  return calls;
}

/** Nodes of a body, up to a limit; a loop is more than any. */
function sizeOf(symbol: FunctionSymbol, limit: number): number {
  const { definition } = symbol;
  if (definition === undefined) return limit + 1;
  let size = 0;
  walkStatement(definition.body, {
    statement: ({ kind }) => {
      if (kind === "while" || kind === "do" || kind === "for" || kind === "range-for" || kind === "switch")
        size = limit + 1;
      return size <= limit;
    },
    expression: (expression) => {
      size += weightOf(expression);
      return size <= limit;
    },
  });
  return size;
}

/** What names a value or changes its type alone weighs nothing. */
function weightOf({ kind }: TypedExpression): number {
  switch (kind) {
    case "convert":
    case "integer":
    case "enumerator":
    case "this":
    case "function":
    case "variable":
      return 0;
    case "call":
    case "method-call":
      return 4;
    default:
      return 2;
  }
}
