import type { Expression } from "../syntax/nodes.ts";
import { unqualified } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { asOperand } from "./class-conversions.ts";
import { operatorCall } from "./class-operators.ts";
import { commonType } from "./common-type.ts";
import type { Context } from "./context.ts";
import { convertTo, promoted, promotedType } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { decayed, unknownType } from "./make.ts";
import type { ArithmeticOperator, At, TypedExpression } from "./nodes.ts";

type AssignSyntax = Extract<Expression, { kind: "assign" }>;

export function typeAssign(context: Context, syntax: AssignSyntax, at: At): TypedExpression {
  const target = typeExpression(context, syntax.target);
  const given = typeExpression(context, syntax.value, target.type);
  const called = operatorCall(context, syntax.operator, [target, given], at);
  if (called !== undefined) return called;
  const lvalue = context.unit.language === "c++";
  const type = lvalue ? target.type : unqualified(target.type);
  if (syntax.operator === "=") {
    const value = convertTo(context, given, target.type, "assignment");
    return { kind: "assign", at, type, lvalue, target, value };
  }
  const operator = compoundOperators[syntax.operator];
  return {
    kind: "compound-assign",
    at,
    type,
    lvalue,
    operator,
    target,
    ...computed(context, operator, target, given),
  };
}

const compoundOperators: Readonly<Record<Exclude<AssignSyntax["operator"], "=">, ArithmeticOperator>> = {
  "+=": "+",
  "-=": "-",
  "*=": "*",
  "/=": "/",
  "%=": "%",
  "<<=": "<<",
  ">>=": ">>",
  "&=": "&",
  "^=": "^",
  "|=": "|",
};

interface Computed {
  readonly value: TypedExpression;
  readonly computeIn: Type;
}

/** In which type `target op= value` is computed (C11 6.5.16.2p3). */
function computed(
  context: Context,
  operator: ArithmeticOperator,
  target: TypedExpression,
  given: TypedExpression,
): Computed {
  if (target.type.kind === "pointer") {
    return { value: promoted(context, given), computeIn: unqualified(target.type) };
  }
  if (operator === "<<" || operator === ">>") {
    return { value: promoted(context, given), computeIn: promotedType(context, target) ?? unknownType };
  }
  const value = decayed(asOperand(context, given));
  const type = commonType(context, target, value);
  if (type === undefined) return { value, computeIn: unknownType };
  return { value: convertTo(context, value, type, "arithmetic"), computeIn: type };
}
