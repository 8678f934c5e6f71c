import type { FunctionSymbol, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkExpression, walkStatement } from "../../reader/typed/walk.ts";
import type { Linkage } from "./scope.ts";

/** Calls within calls that are looked into. */
const deepest = 4;

/**
 * Whether a turn of a loop that is followed by another changes nothing, so that it can only end when something else happens: a register that the
 * hardware changes, a variable that an interrupt handler writes.
 */
export function changesNothing(
  parts: readonly (TypedExpression | TypedStatement | undefined)[],
  linkage: Linkage,
): boolean {
  return parts.every((part) => part === undefined || isQuiet(part, linkage, 0));
}

function isQuiet(part: TypedExpression | TypedStatement, linkage: Linkage, depth: number): boolean {
  let quiet = true;
  const calls = (symbol: FunctionSymbol): void => {
    if (linkage.onlyLooks(symbol)) return;
    const definition = linkage.definitionOf(symbol)?.definition;
    if (definition === undefined || symbol.isVirtual || depth >= deepest) quiet = false;
    else quiet &&= isQuiet(definition.body, linkage, depth + 1);
  };
  const visitor = {
    expression: (expression: TypedExpression): boolean => {
      switch (expression.kind) {
        case "assign":
        case "compound-assign":
        case "update":
        case "new":
        case "delete":
        case "lambda":
        case "construct":
        case "unresolved":
          quiet = false;
          break;
        case "call": {
          const callee = expression.callee.kind === "convert" ? expression.callee.operand : expression.callee;
          if (callee.kind === "function") calls(callee.function);
          else quiet = false;
          break;
        }
        case "method-call":
          if (expression.virtual) quiet = false;
          else calls(expression.method);
          break;
        default:
      }
      return quiet;
    },
    statement: (statement: TypedStatement): boolean => {
      switch (statement.kind) {
        case "block":
        case "empty":
        case "expression":
        case "if":
        // Who leaves the loop makes no further turn.
        case "return":
        case "break":
          break;
        default:
          quiet = false;
      }
      return quiet;
    },
  };
  if (isStatement(part)) walkStatement(part, visitor);
  else walkExpression(part, visitor);
  return quiet;
}

function isStatement(part: TypedExpression | TypedStatement): part is TypedStatement {
  return !("type" in part);
}
