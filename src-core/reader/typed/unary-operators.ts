import type { Expression } from "../syntax/nodes.ts";
import { arithmeticTypeOf } from "../types/conversions.ts";
import { pointerTo, unqualified } from "../types/derive.ts";
import { asOperand } from "./class-conversions.ts";
import { operatorCall } from "./class-operators.ts";
import { closurePointer, plainCallOf } from "./closures.ts";
import type { Context } from "./context.ts";
import { promoted } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { decayed, integerNode, unknownType } from "./make.ts";
import type { At, TypedExpression } from "./nodes.ts";
import { condition, truthType } from "./truth.ts";

type Syntax<Kind extends Expression["kind"]> = Extract<Expression, { kind: Kind }>;

export function typeUnary(context: Context, syntax: Syntax<"unary">, at: At): TypedExpression {
  const operand = typeExpression(context, syntax.operand);
  const called = operatorCall(context, syntax.operator, [operand], at);
  if (called !== undefined) return called;
  switch (syntax.operator) {
    case "*":
      return dereference(decayed(asOperand(context, operand)), at);
    case "&":
      return { kind: "address", at, type: pointerTo(operand.type), lvalue: false, operand };
    case "!":
      return {
        kind: "not",
        at,
        type: truthType(context),
        lvalue: false,
        operand: condition(context, operand),
      };
    case "+":
    case "-":
    case "~": {
      // `+[] {...}`: a lambda has no `+` but as a pointer to its function.
      const call = syntax.operator === "+" ? plainCallOf(context, operand.type) : undefined;
      if (call !== undefined) return closurePointer(operand, call, "promotion");
      const value = promoted(context, operand);
      const kind = syntax.operator === "+" ? "plus" : syntax.operator === "-" ? "negate" : "complement";
      const type = arithmeticTypeOf(value.type) === undefined ? unknownType : unqualified(value.type);
      return { kind, at, type, lvalue: false, operand: value };
    }
  }
}

/** `*operand`, of a class too. */
export function indirection(context: Context, operand: TypedExpression, at: At): TypedExpression {
  return operatorCall(context, "*", [operand], at) ?? dereference(decayed(operand), at);
}

/** The object a pointer points to; `pointer` is decayed. */
export function dereference(pointer: TypedExpression, at: At): TypedExpression {
  if (pointer.kind === "convert" && pointer.reason === "decay" && pointer.operand.type.kind === "function") {
    return pointer.operand;
  }
  const type = pointer.type.kind === "pointer" ? pointer.type.to : unknownType;
  return { kind: "dereference", at, type, lvalue: type.kind !== "void", operand: pointer };
}

export function typeUpdate(context: Context, syntax: Syntax<"update">, at: At): TypedExpression {
  return update(context, syntax.operator, syntax.position, typeExpression(context, syntax.operand), at);
}

/** `++` or `--`, of a class too. */
export function update(
  context: Context,
  operator: "++" | "--",
  position: "prefix" | "postfix",
  operand: TypedExpression,
  at: At,
): TypedExpression {
  // `x++` calls the overload with an unused `int` (C++11 13.5.7).
  const unused = position === "postfix" ? [integerNode(at, 0n, context.unit.types.int)] : [];
  const called = operatorCall(context, operator, [operand, ...unused], at);
  if (called !== undefined) return called;
  const lvalue = context.unit.language === "c++" && position === "prefix";
  const type = lvalue ? operand.type : unqualified(operand.type);
  return { kind: "update", at, type, lvalue, operator, position, operand };
}
