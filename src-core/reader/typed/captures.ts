import type { CaptureDraft } from "./lambdas.ts";
import { variableNode } from "./name-expressions.ts";
import type { At, TypedBlock, TypedExpression, TypedStatement, Variable } from "./nodes.ts";
import { operandsOf, walkExpression, walkStatement } from "./walk.ts";

/** What a lambda's body uses of the function around it. */
export interface Used {
  readonly variables: ReadonlySet<Variable>;
  readonly self: boolean;
}

/** Variables of functions around it that a body names, and whether it names their object. */
export function usedBy(body: TypedBlock, parameters: readonly Variable[]): Used {
  const own = new Set(parameters);
  const named = new Set<Variable>();
  let self = false;
  const visitor = {
    statement(statement: TypedStatement): boolean {
      if (statement.kind === "variables") for (const variable of statement.variables) own.add(variable);
      if (statement.kind === "range-for") own.add(statement.variable);
      return true;
    },
    expression(expression: TypedExpression): boolean {
      if (expression.kind === "variable" && isLocal(expression.variable)) named.add(expression.variable);
      if (expression.kind === "this") self = true;
      if (expression.kind !== "lambda") return true;
      // What a lambda inside needs of the outside it captures.
      if (expression.self !== undefined) self = true;
      for (const operand of operandsOf(expression)) walkExpression(operand, visitor);
      return false;
    },
  };
  walkStatement(body, visitor);
  return { variables: new Set([...named].filter((variable) => !own.has(variable))), self };
}

const isLocal = ({ storage }: Variable): boolean => storage === "local" || storage === "parameter";

/** What `[=]` and `[&]` capture besides (C++11 5.1.2p11). */
export function implicitCaptures(
  used: Used,
  explicit: readonly CaptureDraft[],
  mode: "copy" | "reference" | undefined,
  at: At,
): CaptureDraft[] {
  if (mode === undefined) return [];
  const known = new Set(explicit.map(({ variable }) => variable));
  return [...used.variables]
    .filter((variable) => !known.has(variable))
    .map((variable) => ({ variable, source: variableNode(variable, at), reference: mode === "reference" }));
}
