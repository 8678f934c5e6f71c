import type { Expression } from "../syntax/nodes.ts";
import { sameType, sameUnqualified } from "../types/compare.ts";
import { arithmeticTypeOf, usualArithmetic } from "../types/conversions.ts";
import type { ArithmeticType } from "../types/derive.ts";
import { pointerTo, unqualified } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { conditionOfClass, operatorCall } from "./class-operators.ts";
import type { Context } from "./context.ts";
import { convertTo, isNullConstant, promoted, promotedType } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { decayed, unknownType, unresolved, valueType } from "./make.ts";
import type { ArithmeticOperator, At, ComparisonOperator, TypedExpression } from "./nodes.ts";

type Syntax<Kind extends Expression["kind"]> = Extract<Expression, { kind: Kind }>;

/** A condition: a scalar compared with zero; an object of a class is first converted to `bool`. */
export function condition(context: Context, expression: TypedExpression): TypedExpression {
  if (expression.type.kind === "record") return conditionOfClass(context, expression);
  return decayed(expression);
}

/** The type of comparisons, `!`, `&&`, `||`: `int` in C (C11 6.5.8p6), `bool` in C++. */
function truthType(context: Context): Type {
  return context.unit.language === "c" ? context.unit.types.int : context.unit.types.bool;
}

export function typeUnary(context: Context, syntax: Syntax<"unary">, at: At): TypedExpression {
  const operand = typeExpression(context, syntax.operand);
  const called = operatorCall(context, syntax.operator, [operand], at);
  if (called !== undefined) return called;
  switch (syntax.operator) {
    case "*":
      return dereference(decayed(operand), at);
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
      const value = promoted(context, operand);
      const kind = syntax.operator === "+" ? "plus" : syntax.operator === "-" ? "negate" : "complement";
      return { kind, at, type: unqualified(value.type), lvalue: false, operand: value };
    }
  }
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
  const operand = typeExpression(context, syntax.operand);
  const called = operatorCall(context, syntax.operator, [operand], at);
  if (called !== undefined) return called;
  const lvalue = context.unit.language === "c++" && syntax.position === "prefix";
  return {
    kind: "update",
    at,
    type: lvalue ? operand.type : unqualified(operand.type),
    lvalue,
    operator: syntax.operator,
    position: syntax.position,
    operand,
  };
}

export function typeBinary(context: Context, syntax: Syntax<"binary">, at: At): TypedExpression {
  const left = typeExpression(context, syntax.left);
  const right = typeExpression(context, syntax.right);
  return binary(context, syntax.operator, left, right, at);
}

/** A binary operator on typed operands; the usual conversions are written out. */
export function binary(
  context: Context,
  operator: Syntax<"binary">["operator"],
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression {
  const called = operatorCall(context, operator, [left, right], at);
  if (called !== undefined) return called;
  switch (operator) {
    case ",":
      return {
        kind: "comma",
        at,
        type: right.type,
        lvalue: right.lvalue && context.unit.language === "c++",
        left,
        right,
      };
    case "&&":
    case "||":
      return {
        kind: "logical",
        at,
        type: truthType(context),
        lvalue: false,
        operator,
        left: condition(context, left),
        right: condition(context, right),
      };
    case "<":
    case ">":
    case "<=":
    case ">=":
    case "==":
    case "!=":
      return compare(context, operator, decayed(left), decayed(right), at);
    case "<<":
    case ">>":
      return shift(operator, promoted(context, left), promoted(context, right), at);
    default:
      return arithmetic(context, operator, decayed(left), decayed(right), at);
  }
}

function common(context: Context, left: TypedExpression, right: TypedExpression): ArithmeticType | undefined {
  const a = promotedType(context, left);
  const b = promotedType(context, right);
  const leftType = a && arithmeticTypeOf(a);
  const rightType = b && arithmeticTypeOf(b);
  if (leftType === undefined || rightType === undefined) return undefined;
  return usualArithmetic(leftType, rightType, context.unit.model);
}

function shift(
  operator: "<<" | ">>",
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression {
  const isKnown = arithmeticTypeOf(left.type) !== undefined;
  const type = isKnown ? unqualified(left.type) : unknownType;
  return { kind: "arithmetic", at, type, lvalue: false, operator, left, right };
}

function arithmetic(
  context: Context,
  operator: ArithmeticOperator,
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression {
  const type = common(context, left, right);
  if (type !== undefined) {
    return {
      kind: "arithmetic",
      at,
      type,
      lvalue: false,
      operator,
      left: convertTo(context, left, type, "arithmetic"),
      right: convertTo(context, right, type, "arithmetic"),
    };
  }
  if (operator === "+" || operator === "-") {
    const pointer = pointerArithmetic(context, operator, left, right, at);
    if (pointer !== undefined) return pointer;
  }
  return { kind: "arithmetic", at, type: unknownType, lvalue: false, operator, left, right };
}

function pointerArithmetic(
  context: Context,
  operator: "+" | "-",
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression | undefined {
  if (left.type.kind === "pointer" && right.type.kind === "pointer") {
    if (operator === "+") return undefined;
    return {
      kind: "pointer-difference",
      at,
      type: context.unit.types.difference,
      lvalue: false,
      left,
      right,
    };
  }
  if (left.type.kind === "pointer" && arithmeticTypeOf(right.type)?.kind === "integer") {
    const offset = promoted(context, right);
    return {
      kind: "pointer-offset",
      at,
      type: unqualified(left.type),
      lvalue: false,
      operator,
      pointer: left,
      offset,
    };
  }
  if (operator === "+" && right.type.kind === "pointer" && arithmeticTypeOf(left.type)?.kind === "integer") {
    const offset = promoted(context, left);
    return {
      kind: "pointer-offset",
      at,
      type: unqualified(right.type),
      lvalue: false,
      operator,
      pointer: right,
      offset,
    };
  }
  return undefined;
}

function compare(
  context: Context,
  operator: ComparisonOperator,
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression {
  const type = truthType(context);
  const shared = common(context, left, right) ?? pointerCommon(left, right);
  if (shared === undefined) return { kind: "compare", at, type, lvalue: false, operator, left, right };
  return {
    kind: "compare",
    at,
    type,
    lvalue: false,
    operator,
    left: convertTo(context, left, shared, "arithmetic"),
    right: convertTo(context, right, shared, "arithmetic"),
  };
}

/** The type in which two pointers, or a pointer and a null pointer constant, meet. */
function pointerCommon(left: TypedExpression, right: TypedExpression): Type | undefined {
  if (left.type.kind === "pointer" && (right.type.kind !== "pointer" || isNullConstant(right)))
    return left.type;
  if (right.type.kind === "pointer" && (left.type.kind !== "pointer" || isNullConstant(left)))
    return right.type;
  if (left.type.kind !== "pointer" || right.type.kind !== "pointer") return undefined;
  return right.type.to.kind === "void" ? right.type : left.type;
}

export function typeAssign(context: Context, syntax: Syntax<"assign">, at: At): TypedExpression {
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

const compoundOperators: Readonly<Record<Exclude<Syntax<"assign">["operator"], "=">, ArithmeticOperator>> = {
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
  const value = decayed(given);
  const type = common(context, target, value);
  if (type === undefined) return { value, computeIn: unknownType };
  return { value: convertTo(context, value, type, "arithmetic"), computeIn: type };
}

export function typeConditional(context: Context, syntax: Syntax<"conditional">, at: At): TypedExpression {
  const test = typeExpression(context, syntax.condition);
  const first = syntax.then === undefined ? test : typeExpression(context, syntax.then);
  const second = typeExpression(context, syntax.otherwise);
  const shared = branchType(context, first, second);
  if (shared === undefined) {
    return unresolved(at, "", "other", [test, first, second], "branches of types that do not go together");
  }
  const asIs =
    context.unit.language === "c++" && first.lvalue && second.lvalue && sameType(first.type, second.type);
  const then = asIs ? first : convertTo(context, first, shared, "arithmetic");
  const otherwise = asIs ? second : convertTo(context, second, shared, "arithmetic");
  return {
    kind: "conditional",
    at,
    type: asIs ? first.type : shared,
    lvalue: asIs,
    condition: condition(context, test),
    then,
    otherwise,
  };
}

/** The type in which both branches of `?:` meet (C11 6.5.15p5, p6). */
function branchType(context: Context, then: TypedExpression, otherwise: TypedExpression): Type | undefined {
  const a = valueType(then);
  const b = valueType(otherwise);
  if (sameUnqualified(a, b) && (a.kind !== "integer" || context.unit.language === "c++")) return a;
  if (a.kind === "unknown" || b.kind === "unknown") return unknownType;
  const arithmeticType = common(context, then, otherwise);
  if (arithmeticType !== undefined) return arithmeticType;
  if (a.kind === "void" || b.kind === "void") return context.unit.types.void;
  if (a.kind === "pointer" && isNullConstant(otherwise)) return a;
  if (b.kind === "pointer" && isNullConstant(then)) return b;
  if (a.kind === "pointer" && b.kind === "pointer") {
    return b.to.kind === "void" || (a.to.const === undefined && b.to.const === true) ? b : a;
  }
  return sameUnqualified(a, b) ? a : undefined;
}
