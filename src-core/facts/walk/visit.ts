import type { TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkExpression, walkStatement } from "../../reader/typed/walk.ts";

type Seen = (expression: TypedExpression) => void;

const visitor = (seen: Seen): { readonly expression: (expression: TypedExpression) => boolean } => ({
  expression(expression) {
    seen(expression);
    return true;
  },
});

/** Calls `seen` for every expression in a statement, outer ones first. */
export function visitStatement(statement: TypedStatement, seen: Seen): void {
  walkStatement(statement, visitor(seen));
}

export function visitExpression(expression: TypedExpression, seen: Seen): void {
  walkExpression(expression, visitor(seen));
}
