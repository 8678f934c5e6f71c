import type { FunctionDefinition, TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import type { Type } from "../../reader/types/types.ts";
import { isSilent } from "./copies.ts";
import type { FunctionScope } from "./scope.ts";

/** A local variable, whose object ends when the function returns: it is moved into the result (C++11 12.8p32). */
export function endsWithFunction(scope: FunctionScope, variable: Variable): boolean {
  const { storage, type } = variable;
  const isOwn = (storage === "local" || storage === "parameter") && !scope.captured.has(variable);
  return isOwn && type.kind === "record" && type.volatile !== true;
}

/**
 * The variable that is the result itself, no copy being made (C++11 12.8p31): avr-gcc does so where each `return` names
 * the same one, without parentheses, and the function's outermost block declares it.
 */
export function resultVariable(
  scope: FunctionScope,
  { body }: FunctionDefinition,
  returns: Type,
): Variable | undefined {
  if (returns.kind !== "record" || isSilent(scope, returns)) return undefined;
  const returned = new Set<Variable | undefined>();
  walkStatement(body, {
    expression: ({ kind }) => kind !== "lambda",
    statement: (statement) => {
      if (statement.kind === "return") {
        const { value, parenthesized } = statement;
        returned.add(value?.kind === "variable" && !parenthesized ? value.variable : undefined);
      }
      return true;
    },
  });
  const [only] = returned;
  if (only === undefined || returned.size > 1 || only.storage !== "local") return undefined;
  const isSame = only.type.kind === "record" && only.type.record === returns.record && !only.type.volatile;
  return isSame && body.statements.some((statement) => declares(statement, only)) ? only : undefined;
}

function declares(statement: TypedStatement, variable: Variable): boolean {
  if (statement.kind === "label" && statement.body !== undefined) return declares(statement.body, variable);
  return statement.kind === "variables" && statement.variables.includes(variable);
}
