import { referred } from "../types/derive.ts";
import type { RecordDeclaration } from "../types/types.ts";
import type { Context } from "./context.ts";
import { toBase } from "./convert.ts";
import { categoryOf } from "./make.ts";
import { functionNode } from "./name-expressions.ts";
import type { At, FunctionSymbol, TypedExpression } from "./nodes.ts";
import { completeArguments } from "./overloads.ts";
import { returnType } from "./return-type.ts";

function asMemberOf(object: TypedExpression, record: RecordDeclaration | undefined): TypedExpression {
  if (record === undefined || object.type.kind !== "record" || object.type.record === record) return object;
  return toBase(object, { kind: "record", record }) ?? object;
}

/** A call of a member function on an object; static ones are called without it. */
export function methodCall(
  context: Context,
  object: TypedExpression,
  method: FunctionSymbol,
  given: readonly TypedExpression[],
  at: At,
): TypedExpression {
  const returns = returnType(method);
  const type = referred(returns);
  const category = categoryOf(returns);
  const complete = completeArguments(context, method, given);
  if (method.isStatic || method.memberOf === undefined) {
    return { kind: "call", at, type, ...category, callee: functionNode(method, at), arguments: complete };
  }
  return {
    kind: "method-call",
    at,
    type,
    ...category,
    object: asMemberOf(object, method.memberOf),
    method,
    virtual: method.isVirtual,
    arguments: complete,
  };
}
