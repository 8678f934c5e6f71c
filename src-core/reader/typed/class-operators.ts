import { referred } from "../types/derive.ts";
import { withArguments } from "./argument-lookup.ts";
import { classConversion } from "./class-conversions.ts";
import type { Context } from "./context.ts";
import { decayed } from "./make.ts";
import { methodCall } from "./method-calls.ts";
import { functionNode } from "./name-expressions.ts";
import type { At, TypedExpression } from "./nodes.ts";
import { bestOverload, completeArguments } from "./overloads.ts";
import { lookup, lookupHere } from "./scope.ts";
import { templateCandidates } from "./templates.ts";
import { dereference } from "./unary-operators.ts";

/** A class object as a condition: through its conversion to `bool`. */
export function conditionOfClass(context: Context, object: TypedExpression): TypedExpression {
  return classConversion(context, object, context.unit.types.bool, "explicit") ?? object;
}

const isOverloadable = (operand: TypedExpression | undefined): boolean =>
  operand?.type.kind === "record" || operand?.type.kind === "enumeration";

/**
 * The call that an operator on objects of classes or enumerations means (C++11 13.3.1.2); undefined where it
 * is the built-in operator.
 */
export function operatorCall(
  context: Context,
  operator: string,
  operands: readonly TypedExpression[],
  at: At,
): TypedExpression | undefined {
  if (context.unit.language === "c" || !operands.some(isOverloadable)) return undefined;
  const name = `operator${operator}`;
  return memberOperator(context, name, operands, at) ?? freeOperator(context, name, operands, at);
}

function memberOperator(
  context: Context,
  name: string,
  operands: readonly TypedExpression[],
  at: At,
): TypedExpression | undefined {
  const [object, ...rest] = operands;
  if (object?.type.kind !== "record") return undefined;
  const scope = context.unit.classes.get(object.type.record)?.scope;
  const entry = scope && lookupHere(scope, name);
  if (entry?.kind !== "overloads") return undefined;
  const method =
    bestOverload(context, entry.functions, rest) ??
    bestOverload(context, templateCandidates(context, entry, undefined, rest), rest);
  return method && methodCall(context, object, method, rest, at);
}

function freeOperator(
  context: Context,
  name: string,
  operands: readonly TypedExpression[],
  at: At,
): TypedExpression | undefined {
  const visible = lookup(context.scope, name);
  const entry = withArguments(context, name, visible?.kind === "overloads" ? visible : undefined, operands);
  if (entry === undefined) return undefined;
  const candidates = [...entry.functions, ...templateCandidates(context, entry, undefined, operands)];
  const chosen = bestOverload(
    context,
    candidates.filter((candidate) => candidate.memberOf === undefined),
    operands,
  );
  if (chosen === undefined) return undefined;
  const { returns } = chosen.type;
  return {
    kind: "call",
    at,
    type: referred(returns),
    lvalue: returns.kind === "reference",
    callee: functionNode(chosen, at),
    arguments: completeArguments(context, chosen, operands),
  };
}

/** What `->` on an object of a class leads to: through its `operator->`. */
export function arrowTarget(context: Context, object: TypedExpression): TypedExpression {
  const pointer = memberOperator(context, "operator->", [object], object.at);
  if (pointer === undefined) return object;
  return dereference(decayed(pointer), object.at);
}
