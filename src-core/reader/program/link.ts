import { isStandIn } from "../tokens.ts";
import type { FunctionSymbol, TypedUnit, Variable } from "../typed/nodes.ts";
import type { Program } from "./program.ts";

type Linked = Pick<Program, "functions" | "variables" | "definitionOf" | "definingVariable">;

/** Whether a body is known; stand-in headers' bodies are typed only when asked for by name. */
function hasBody(symbol: FunctionSymbol): boolean {
  return symbol.definition !== undefined;
}

/** Joins the declarations of several units by their linkage names (C11 6.2.2, C++11 3.5). */
export function link(units: readonly TypedUnit[]): Linked {
  const functions = new Map<string | FunctionSymbol, FunctionSymbol>();
  const variables = new Map<string | Variable, Variable>();
  for (const unit of units) {
    for (const symbol of unit.functions) {
      if (symbol.standIn) continue;
      const key = symbol.linkageName ?? symbol;
      const held = functions.get(key);
      if (held === undefined || (!hasBody(held) && hasBody(symbol))) functions.set(key, symbol);
    }
    for (const variable of unit.variables) {
      if (isStandIn(variable.at.first.file)) continue;
      const key = variable.linkageName ?? variable;
      const held = variables.get(key);
      if (held === undefined || (held.initializer === undefined && variable.initializer !== undefined)) {
        variables.set(key, variable);
      }
    }
  }
  return {
    functions: [...functions.values()],
    variables: [...variables.values()],
    definitionOf(symbol) {
      if (symbol.definition !== undefined) return symbol;
      const linked = symbol.linkageName === undefined ? undefined : functions.get(symbol.linkageName);
      return linked !== undefined && hasBody(linked) ? linked : undefined;
    },
    definingVariable(variable) {
      if (variable.linkageName === undefined) return variable;
      return variables.get(variable.linkageName) ?? variable;
    },
  };
}
