import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol, TypedExpression, TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { expressionsOf, walkStatement } from "../../reader/typed/walk.ts";
import type { Type } from "../../reader/types/types.ts";

/** Whether another function than `symbol` may change a global: it stores into it, or hands out a way to do so. */
export function isWrittenElsewhere(program: Program, variable: Variable, symbol: FunctionSymbol): boolean {
  const meant = program.definingVariable(variable);
  const isIt = (expression: TypedExpression): boolean => {
    const root = rootOf(expression);
    return root !== undefined && program.definingVariable(root) === meant;
  };
  let found = false;
  for (const each of program.functions) {
    if (each === symbol || each.definition === undefined) continue;
    walkStatement(each.definition.body, {
      expression: (expression) => {
        found ||= waysInto(expression).some(isIt);
        return !found;
      },
      statement: (statement) => {
        found ||= handedOut(statement).some((value) => isWay(value.type) && isIt(value));
        return !found;
      },
    });
  }
  return found;
}

/** The parts of an expression through which it, or whoever gets its value, may store. */
function waysInto(expression: TypedExpression): readonly TypedExpression[] {
  switch (expression.kind) {
    case "assign":
    case "compound-assign":
      return [expression.target, ...(isWay(expression.value.type) ? [expression.value] : [])];
    case "update":
      return [expression.operand];
    case "call":
    case "method-call":
      return expression.arguments.filter(({ type }) => isWay(type));
    default:
      return [];
  }
}

/** Values that a statement gives a name or returns. */
function handedOut(statement: TypedStatement): readonly TypedExpression[] {
  if (statement.kind === "return") return statement.value === undefined ? [] : [statement.value];
  if (statement.kind !== "variables") return [];
  return statement.variables.flatMap(({ initializer }) =>
    initializer === undefined ? [] : expressionsOf(initializer),
  );
}

function isWay(type: Type): boolean {
  return (type.kind === "pointer" || type.kind === "reference") && type.to.const !== true;
}

/** The variable that an expression is, or is in, or is the address of. */
function rootOf(expression: TypedExpression): Variable | undefined {
  switch (expression.kind) {
    case "variable":
      return expression.variable;
    case "member":
      return rootOf(expression.object);
    case "index":
      return rootOf(expression.array);
    case "convert":
    case "address":
    case "dereference":
      return rootOf(expression.operand);
    case "pointer-offset":
      return rootOf(expression.pointer);
    default:
      return undefined;
  }
}
