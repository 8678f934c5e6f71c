import type {
  FunctionDefinition,
  FunctionSymbol,
  TypedExpression,
  TypedUnit,
} from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";

/** One call of a function by name; `arguments` without the object of a member function. */
export interface Call {
  readonly callee: FunctionSymbol;
  readonly arguments: readonly TypedExpression[];
  readonly expression: TypedExpression;
}

/** Which functions the firmware has, over all its units, and who calls whom. Calls through pointers are not seen. */
export interface CallGraph {
  /** Functions with a body, each once. */
  readonly functions: readonly FunctionSymbol[];
  /** The symbol that has the body, which may be in another unit; undefined where there is none. */
  definitionOf(symbol: FunctionSymbol): FunctionSymbol | undefined;
  callsIn(symbol: FunctionSymbol): readonly Call[];
  /** `roots` and all that they call, directly or not. */
  reachableFrom(roots: Iterable<FunctionSymbol>): ReadonlySet<FunctionSymbol>;
}

export function callGraphOf(units: readonly TypedUnit[]): CallGraph {
  const defined = new Map<string, FunctionSymbol>();
  const functions: FunctionSymbol[] = [];
  for (const unit of units) {
    for (const symbol of unit.functions) {
      if (symbol.standIn || symbol.definition === undefined) continue;
      const { linkageName } = symbol;
      if (linkageName !== undefined && defined.has(linkageName)) continue;
      if (linkageName !== undefined) defined.set(linkageName, symbol);
      functions.push(symbol);
    }
  }
  const definitionOf = (symbol: FunctionSymbol) =>
    symbol.linkageName === undefined
      ? symbol.definition && symbol
      : (defined.get(symbol.linkageName) ?? (symbol.definition && symbol));
  const calls = new Map<FunctionSymbol, readonly Call[]>();
  const callsIn = (symbol: FunctionSymbol) => {
    const known = calls.get(symbol);
    if (known !== undefined) return known;
    const found = symbol.definition === undefined ? [] : callsOf(symbol.definition);
    calls.set(symbol, found);
    return found;
  };
  return {
    functions,
    definitionOf,
    callsIn,
    reachableFrom(roots) {
      const reached = new Set<FunctionSymbol>();
      const open = [...roots];
      for (let next = open.pop(); next !== undefined; next = open.pop()) {
        const symbol = definitionOf(next);
        if (symbol === undefined || reached.has(symbol)) continue;
        reached.add(symbol);
        for (const { callee } of callsIn(symbol)) if (!callee.standIn) open.push(callee);
      }
      return reached;
    },
  };
}

/** What a lambda calls is called when it runs, not where it stands. */
function callsOf(definition: FunctionDefinition): readonly Call[] {
  const found: Call[] = [];
  walkStatement(definition.body, {
    expression(expression) {
      const call = callOf(expression);
      if (call !== undefined) found.push(call);
      return expression.kind !== "lambda";
    },
  });
  return found;
}

/** The call that this expression is, where the function is known by name. */
export function callOf(expression: TypedExpression): Call | undefined {
  if (expression.kind === "method-call") {
    return { callee: expression.method, arguments: expression.arguments, expression };
  }
  if (expression.kind !== "call") return undefined;
  const callee = functionNamedBy(expression.callee);
  return callee && { callee, arguments: expression.arguments, expression };
}

/** The function that an expression names: `f`, `&f`, `*f`, a lambda, with or without casts. */
export function functionNamedBy(expression: TypedExpression): FunctionSymbol | undefined {
  switch (expression.kind) {
    case "function":
    case "lambda":
      return expression.function;
    case "convert":
    case "address":
    case "dereference":
      return functionNamedBy(expression.operand);
    default:
      return undefined;
  }
}
