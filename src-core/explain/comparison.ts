import { type Token, visibleRange } from "../reader/tokens.ts";
import type { At, TypedExpression, TypedStatement, Variable } from "../reader/typed/nodes.ts";
import { type Visitor, walkStatement } from "../reader/typed/walk.ts";
import { around, written } from "./around.ts";
import { holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** A constant compared with something that is none. */
export interface Comparison {
  /** What both sides are called: variables, constants, macros, functions. */
  readonly names: readonly string[];
}

/**
 * The comparison that a constant at a place takes part in: `reply == C`, `case C:`, or `expect(C)` where the
 * function compares that parameter.
 */
export function comparisonAt(place: Place, constant: TypedExpression): Comparison | undefined {
  for (const { expression } of around(place).toReversed()) {
    const other = otherSide(place, expression, constant) ?? otherSideInCallee(place, expression, constant);
    if (other !== undefined) return { names: [...namesOf(constant), ...namesOf(other)] };
  }
  const condition = conditionOfCase(place);
  return condition && { names: [...namesOf(constant), ...namesOf(condition)] };
}

function otherSide(
  place: Place,
  expression: TypedExpression,
  constant: TypedExpression,
): TypedExpression | undefined {
  if (expression.kind !== "compare" || (expression.operator !== "==" && expression.operator !== "!="))
    return undefined;
  const sides = [written(expression.left), written(expression.right)];
  const other = sides.find((side) => side !== constant && !isUnder(place, side));
  return other !== undefined && isVariable(other) && sides.length === 2 ? other : undefined;
}

function isUnder({ file, offset }: Place, { at }: { readonly at: At }): boolean {
  return holds(visibleRange(at.first, at.last), file, offset);
}

function isVariable({ kind }: TypedExpression): boolean {
  return kind !== "integer" && kind !== "floating" && kind !== "enumerator";
}

function otherSideInCallee(
  place: Place,
  expression: TypedExpression,
  constant: TypedExpression,
): TypedExpression | undefined {
  if (expression.kind !== "call" && expression.kind !== "method-call") return undefined;
  const index = expression.arguments.findIndex(
    (argument) => written(argument) === constant || isUnder(place, argument),
  );
  const callee =
    expression.kind === "method-call"
      ? expression.method
      : expression.callee.kind === "function"
        ? expression.callee.function
        : undefined;
  const definition = callee && place.facts.program.definitionOf(callee)?.definition;
  const parameter = definition?.parameters[index];
  return definition === undefined || parameter === undefined
    ? undefined
    : comparedWith(definition.body, parameter);
}

/** What a function compares its parameter with. */
function comparedWith(body: TypedStatement, parameter: Variable): TypedExpression | undefined {
  let found: TypedExpression | undefined;
  const isParameter = (side: TypedExpression) => side.kind === "variable" && side.variable === parameter;
  walkStatement(body, {
    expression(expression) {
      if (expression.kind !== "compare") return found === undefined;
      const left = written(expression.left);
      const right = written(expression.right);
      const other = isParameter(left) ? right : isParameter(right) ? left : undefined;
      if (other !== undefined && isVariable(other)) found = other;
      return found === undefined;
    },
  });
  return found;
}

function conditionOfCase(place: Place): TypedExpression | undefined {
  let found: TypedExpression | undefined;
  const inSwitch = (condition: TypedExpression): Visitor => ({
    statement(statement) {
      if (statement.kind === "case" && isUnder(place, statement.value)) found = written(condition);
      return found === undefined && statement.kind !== "switch";
    },
  });
  const outside: Visitor = {
    statement(statement) {
      if (statement.kind === "switch") walkStatement(statement.body, inSwitch(statement.condition));
      return found === undefined;
    },
  };
  for (const { standIn, definition } of place.unit.typed.functions) {
    if (standIn || definition === undefined || !isUnder(place, definition.body)) continue;
    walkStatement(definition.body, outside);
  }
  return found;
}

function namesOf(expression: TypedExpression): readonly string[] {
  return [...ownNames(expression), ...macroNames(expression.at.first)];
}

function ownNames(expression: TypedExpression): readonly string[] {
  switch (expression.kind) {
    case "variable":
      return [expression.variable.name];
    case "enumerator":
      return [expression.enumerator.name];
    case "member":
      return [expression.field.name];
    case "call":
      return expression.callee.kind === "function" ? [expression.callee.function.name] : [];
    case "method-call":
      return [expression.method.name];
    case "index":
      return ownNames(expression.array);
    case "dereference":
    case "convert":
      return ownNames(expression.operand);
    default:
      return [];
  }
}

function macroNames({ macro }: Token): readonly string[] {
  const names: string[] = [];
  for (let use = macro; use !== undefined; use = use.within) names.push(use.name);
  return names;
}
