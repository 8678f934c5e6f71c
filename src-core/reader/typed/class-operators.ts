import { referred } from "../types/derive.ts";
import { withArguments } from "./argument-lookup.ts";
import { classConversion, takesItself } from "./class-conversions.ts";
import type { Context } from "./context.ts";
import { categoryOf, decayed } from "./make.ts";
import { methodCall } from "./method-calls.ts";
import { functionNode } from "./name-expressions.ts";
import type { At, TypedExpression } from "./nodes.ts";
import { bestCandidate, type Candidate, completeArguments } from "./overloads.ts";
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
  const member = memberOperator(context, name, operands);
  if (operator === "=" && isCompilersOwn(member, operands)) return undefined;
  const free =
    operator === "=" || operator === "[]" || operator === "()"
      ? undefined
      : freeOperator(context, name, operands);
  const isMember = member !== undefined && (free === undefined || member.fit <= free.fit);
  const [object, ...rest] = operands;
  if (isMember && object !== undefined) return methodCall(context, object, member.symbol, rest, at);
  if (free === undefined) return undefined;
  const { returns } = free.symbol.type;
  return {
    kind: "call",
    at,
    type: referred(returns),
    ...categoryOf(returns),
    callee: functionNode(free.symbol, at),
    arguments: completeArguments(context, free.symbol, operands),
  };
}

/** An assignment that the class has without its author's words (C++11 12.8p18, p22). */
function isCompilersOwn(member: Candidate | undefined, operands: readonly TypedExpression[]): boolean {
  const [target, value] = operands;
  if (member === undefined || target?.type.kind !== "record") return false;
  const { record } = target.type;
  if (member.symbol.bodyless === "default") return true;
  const isSame = value?.type.kind === "record" && value.type.record === record;
  return isSame && !takesItself(member.symbol, record);
}

function memberOperator(
  context: Context,
  name: string,
  operands: readonly TypedExpression[],
): Candidate | undefined {
  const [object, ...rest] = operands;
  if (object?.type.kind !== "record") return undefined;
  const scope = context.unit.classes.get(object.type.record)?.scope;
  const entry = scope && lookupHere(scope, name);
  if (entry?.kind !== "overloads") return undefined;
  return (
    bestCandidate(context, entry.functions, rest, object) ??
    bestCandidate(context, templateCandidates(context, entry, undefined, rest), rest, object)
  );
}

function freeOperator(
  context: Context,
  name: string,
  operands: readonly TypedExpression[],
): Candidate | undefined {
  const visible = lookup(context.scope, name);
  const entry = withArguments(context, name, visible?.kind === "overloads" ? visible : undefined, operands);
  if (entry === undefined) return undefined;
  const candidates = [...entry.functions, ...templateCandidates(context, entry, undefined, operands)];
  const free = candidates.filter((candidate) => candidate.memberOf === undefined);
  return bestCandidate(context, free, operands, undefined);
}

/** What `->` on an object of a class leads to: through its `operator->`. */
export function arrowTarget(context: Context, object: TypedExpression): TypedExpression {
  const found = memberOperator(context, "operator->", [object]);
  if (found === undefined) return object;
  return dereference(decayed(methodCall(context, object, found.symbol, [], object.at)), object.at);
}
