import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";
import { lowerOwn } from "./assembly.ts";
import { hasEffects, isTurned } from "./call-order.ts";
import { lowerCall } from "./calls.ts";
import { isSilent } from "./copies.ts";
import { furtherArguments, nextArgument } from "./further-arguments.ts";
import { lowerDelete, lowerNew } from "./heap.ts";
import { initialized } from "./initializers.ts";
import { assignObject } from "./object-assignment.ts";
import { lowerArithmetic } from "./operators.ts";
import {
  address,
  addressOf,
  classStep,
  indexValue,
  placeOf,
  placeOnce,
  readPlace,
  roomFor,
  writePlace,
} from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { converted, type Shape, shapeOf } from "./shape.ts";
import { lowerStatements } from "./statements.ts";
import { temporaryObject, wholeExpression } from "./temporaries.ts";

/** The shape of an expression's value. Throws `CannotLower` where its type is not known. */
export function shapeAt(scope: FunctionScope, expression: TypedExpression): Shape {
  const shape = shapeOf(expression.type, scope.linkage.model);
  if (shape === undefined) throw new CannotLower("a value whose type is not known", expression.at);
  return shape;
}

/** An expression's value, converted to another shape. */
export function valueAs(scope: FunctionScope, expression: TypedExpression, to: Shape): string {
  const code = converted(lowerValue(scope, expression), shapeAt(scope, expression), to);
  if (code === undefined) throw new CannotLower("a conversion between these types", expression.at);
  return code;
}

/** JavaScript that is truthy where a scalar is not zero. */
export function condition(scope: FunctionScope, expression: TypedExpression): string {
  if (expression.kind === "compare") return comparison(scope, expression);
  if (expression.kind === "logical") {
    return `(${condition(scope, expression.left)}${expression.operator}${condition(scope, expression.right)})`;
  }
  if (expression.kind === "not") return `!${condition(scope, expression.operand)}`;
  const shape = shapeAt(scope, expression);
  if (shape.kind === "object" || shape.kind === "none")
    throw new CannotLower("an object as a condition", expression.at);
  return `(${lowerValue(scope, expression)}!==${shape.kind === "wide" ? "0n" : "0"})`;
}

/** JavaScript for an expression's value: `reference` leaves what a call returns by reference as an address. */
export function lowerValue(
  scope: FunctionScope,
  expression: TypedExpression,
  wanted: "value" | "reference" = "value",
): string {
  switch (expression.kind) {
    case "integer": {
      const shape = shapeAt(scope, expression);
      return shape.kind === "wide" ? `(${expression.value}n)` : literal(expression.value);
    }
    case "floating": {
      const shape = shapeAt(scope, expression);
      const value =
        shape.kind === "floating" && shape.bits === 32 ? Math.fround(expression.value) : expression.value;
      return number(value);
    }
    case "string":
    case "variable":
    case "member":
    case "index":
    case "dereference":
      return expression.type.kind === "function"
        ? addressOf(scope, expression)
        : readPlace(scope, placeOf(scope, expression), expression);
    case "function":
      return String(scope.linkage.functionPointer(expression.function));
    case "enumerator": {
      const { value, name } = expression.enumerator;
      if (value === undefined) throw new CannotLower(`\`${name}\`, whose value is not known`, expression.at);
      return shapeAt(scope, expression).kind === "wide" ? `(${value}n)` : literal(value);
    }
    case "this":
      return scope.self;
    case "address":
      return addressOf(scope, expression.operand);
    case "negate":
    case "plus":
    case "complement":
      return unary(scope, expression);
    case "not":
      return `(${condition(scope, expression)}?1:0)`;
    case "compare":
    case "logical":
      return `(${condition(scope, expression)}?1:0)`;
    case "update":
      return update(scope, expression);
    case "arithmetic": {
      const shape = shapeAt(scope, expression);
      const { operator, left, right, at } = expression;
      const first = lowerValue(scope, left);
      const { before, code } = ahead(
        scope,
        isTurned(scope, operator, left, right),
        operandOf(scope, operator, right, expression.type),
      );
      const result = lowerArithmetic(operator, first, code, shape, scope.place(at), at);
      return before === "" ? result : `(${before}${result})`;
    }
    case "pointer-offset": {
      const step = `${indexValue(scope, expression.offset)}*${stepOf(scope, expression.type, expression)}`;
      return address(scope, `${lowerValue(scope, expression.pointer)}${expression.operator}${step}`);
    }
    case "pointer-difference": {
      const bytes = `${lowerValue(scope, expression.left)}-${lowerValue(scope, expression.right)}`;
      const signed = scope.linkage.model.pointer === 16 ? `((${bytes})<<16>>16)` : `((${bytes})|0)`;
      return `(${signed}/${stepOf(scope, expression.left.type, expression)}|0)`;
    }
    case "comma":
      return `(${lowerValue(scope, expression.left)},${lowerValue(scope, expression.right)})`;
    case "assign":
      return assign(scope, expression);
    case "compound-assign":
      return compoundAssign(scope, expression);
    case "conditional":
      if (!expression.lvalue && shapeAt(scope, expression).kind === "object")
        return temporaryObject(scope, expression);
      return `(${condition(scope, expression.condition)}?${lowerValue(scope, expression.then)}:${lowerValue(scope, expression.otherwise)})`;
    case "call":
    case "method-call": {
      const code = lowerCall(scope, expression);
      if (!expression.lvalue || wanted === "reference") return code;
      return readPlace(scope, { kind: "memory", address: code }, expression);
    }
    case "convert":
      return convert(scope, expression);
    case "construct": {
      const { initializer } = expression;
      if (shapeAt(scope, expression).kind === "object") return temporaryObject(scope, expression);
      if (initializer.kind === "value") return lowerValue(scope, initializer.value);
      const room = roomFor(scope, expression.type, expression);
      const steps = initialized(scope, room, expression.type, initializer, "zeroed");
      return `(${[...steps, readPlace(scope, { kind: "memory", address: room }, expression)].join(",")})`;
    }
    case "lambda":
      return temporaryObject(scope, expression);
    case "new":
      return lowerNew(scope, expression);
    case "delete":
      return lowerDelete(scope, expression);
    case "further-arguments":
      return furtherArguments;
    case "next-argument":
      return nextArgument(scope, expression);
    case "statement-value":
      return statementValue(scope, expression);
    case "unresolved":
      return lowerOwn(scope, expression);
  }
}

const literal = (value: bigint): string => (value < 0n ? `(${value})` : String(value));

function number(value: number): string {
  if (Number.isNaN(value)) return "NaN";
  if (!Number.isFinite(value)) return value < 0 ? "(-Infinity)" : "Infinity";
  return value < 0 || Object.is(value, -0) ? `(${Object.is(value, -0) ? "-0" : value})` : String(value);
}

/**
 * The right operand: shift counts are numbers whatever their type, and where cycles are counted those of the loop that
 * shifts by a variable are counted with it.
 */
function operandOf(scope: FunctionScope, operator: string, right: TypedExpression, type: Type): string {
  const code = lowerValue(scope, right);
  if (operator !== "<<" && operator !== ">>") return code;
  const count = shapeAt(scope, right).kind === "wide" ? `Number(BigInt.asIntN(32,${code}))` : code;
  const turn = scope.linkage.costs?.shiftTurn(type, right) ?? 0;
  return turn === 0 ? count : `shifting(${count},${turn})`;
}

function stepOf(scope: FunctionScope, type: Type, expression: TypedExpression): number {
  if (type.kind !== "pointer") throw new CannotLower("a step of something that is no pointer", expression.at);
  const { to } = type;
  const size = to.kind === "void" || to.kind === "function" ? 1 : sizeOf(to, scope.linkage.model);
  if (size === undefined || size === 0) throw new CannotLower("a step of unknown size", expression.at);
  return size;
}

function comparison(scope: FunctionScope, expression: Extract<TypedExpression, { kind: "compare" }>): string {
  const operator =
    expression.operator === "==" ? "===" : expression.operator === "!=" ? "!==" : expression.operator;
  const { left, right } = expression;
  const { before, code } = ahead(
    scope,
    isTurned(scope, expression.operator, left, right),
    lowerValue(scope, right),
  );
  return `(${before}${before === "" ? "" : "("}${lowerValue(scope, left)}${operator}${code}${before === "" ? "" : ")"})`;
}

/** Code that is to run before what stands to the left of it: put into a variable. */
function ahead(
  scope: FunctionScope,
  isFirst: boolean,
  code: string,
): { readonly before: string; readonly code: string } {
  if (!isFirst) return { before: "", code };
  const held = scope.temporary();
  return { before: `${held}=${code},`, code: held };
}

function unary(
  scope: FunctionScope,
  expression: Extract<TypedExpression, { kind: "negate" | "plus" | "complement" | "not" }>,
): string {
  const code = lowerValue(scope, expression.operand);
  const shape = shapeAt(scope, expression);
  if (expression.kind === "plus") return code;
  if (shape.kind === "floating") return `(-${code})`;
  const p = scope.place(expression.at);
  const zero = shape.kind === "wide" ? "0n" : "0";
  if (expression.kind === "negate") return lowerArithmetic("-", zero, code, shape, p, expression.at);
  const ones = shape.kind === "wide" ? "(-1n)" : "(-1)";
  return lowerArithmetic("^", code, ones, shape, p, expression.at);
}

function update(scope: FunctionScope, expression: Extract<TypedExpression, { kind: "update" }>): string {
  const { operand, operator, position } = expression;
  const { before, place } = placeOnce(scope, operand);
  const shape = shapeAt(scope, operand);
  const sign = operator === "++" ? "+" : "-";
  const old = scope.temporary();
  const next = stepped(scope, shape, operand, old, sign);
  const write = writePlace(scope, place, operand.type, next, scope.place(expression.at));
  const read = `${old}=${readPlace(scope, place, operand)}`;
  return position === "prefix" ? `(${before}${read},${write})` : `(${before}${read},${write},${old})`;
}

function stepped(
  scope: FunctionScope,
  shape: Shape,
  operand: TypedExpression,
  old: string,
  sign: "+" | "-",
): string {
  if (shape.kind === "pointer") return address(scope, `${old}${sign}${stepOf(scope, operand.type, operand)}`);
  if (shape.kind === "integer" && shape.truth) return sign === "+" ? "1" : `(1-${old})`;
  const p = scope.place(operand.at);
  const { model } = scope.linkage;
  const isNarrow = shape.kind === "integer" && shape.bits < model.int;
  // C11 6.5.3.1p2: as `E += 1`, so narrow operands are promoted and converted back.
  if (isNarrow) return converted(`(${old}${sign}1)`, int(model.int), shape) ?? old;
  return lowerArithmetic(sign, old, shape.kind === "wide" ? "1n" : "1", shape, p, operand.at);
}

const int = (bits: 16 | 32): Shape => ({ kind: "integer", bits, width: bits, signed: true, truth: false });

function assign(scope: FunctionScope, expression: Extract<TypedExpression, { kind: "assign" }>): string {
  const { target, value } = expression;
  const shape = shapeAt(scope, target);
  if (shape.kind === "object") return assignObject(scope, expression);
  return writePlace(
    scope,
    placeOf(scope, target),
    target.type,
    valueAs(scope, value, shape),
    scope.place(value.at),
  );
}

function compoundAssign(
  scope: FunctionScope,
  expression: Extract<TypedExpression, { kind: "compound-assign" }>,
): string {
  const { target, value, operator, computeIn, at } = expression;
  const p = scope.place(at);
  const { before: found, place } = placeOnce(scope, target);
  // avr-gcc evaluates the value first; a variable without an address is changed by nothing else.
  const isLate = place.kind !== "name" && hasEffects(value);
  const shape = shapeAt(scope, target);
  const held = readPlace(scope, place, target);
  if (shape.kind === "pointer") {
    const { before, code } = ahead(scope, isLate, indexValue(scope, value));
    const step = `${code}*${stepOf(scope, target.type, expression)}`;
    return `(${before}${found}${writePlace(scope, place, target.type, address(scope, `${held}${operator}${step}`), p)})`;
  }
  const inside = shapeOf(computeIn, scope.linkage.model);
  const left = inside && converted(held, shape, inside);
  if (inside === undefined || left === undefined) throw new CannotLower("this assignment", at);
  const isShift = operator === "<<" || operator === ">>";
  const { before, code: right } = ahead(
    scope,
    isLate,
    isShift ? operandOf(scope, operator, value, computeIn) : valueAs(scope, value, inside),
  );
  const result = converted(lowerArithmetic(operator, left, right, inside, p, at), inside, shape);
  if (result === undefined) throw new CannotLower("this assignment", at);
  return `(${before}${found}${writePlace(scope, place, target.type, result, p)})`;
}

function convert(scope: FunctionScope, expression: Extract<TypedExpression, { kind: "convert" }>): string {
  const { operand, type, reason } = expression;
  if (type.kind === "reference") return addressOf(scope, operand);
  if (reason === "decay") return addressOf(scope, operand);
  if (expression.lvalue) return readPlace(scope, placeOf(scope, expression), expression);
  const from = operand.type;
  if (
    from.kind === "pointer" &&
    type.kind === "pointer" &&
    from.to.kind === "record" &&
    type.to.kind === "record"
  ) {
    const step = classStep(from.to.record, type.to.record);
    const code = lowerValue(scope, operand);
    if (step === 0) return code;
    const held = scope.temporary();
    return `((${held}=${code})===0?0:${held}+${step})`;
  }
  if (from.kind === "record" && type.kind === "pointer") return lambdaPointer(scope, operand, from.record);
  if (from.kind === "record" && type.kind === "record") return addressOf(scope, expression);
  if (from.kind === "array" && type.kind === "pointer") return addressOf(scope, operand);
  return valueAs(scope, operand, shapeAt(scope, expression));
}

/** A lambda that captures nothing as a pointer to its function. */
function lambdaPointer(scope: FunctionScope, lambda: TypedExpression, record: RecordDeclaration): string {
  const call = scope.linkage.classOf(record)?.functions.find(({ isStatic }) => isStatic);
  if (call === undefined) throw new CannotLower("a conversion between these types", lambda.at);
  return `(${lowerValue(scope, lambda)},${scope.linkage.functionPointer(call)})`;
}

function statementValue(
  scope: FunctionScope,
  expression: Extract<TypedExpression, { kind: "statement-value" }>,
): string {
  const { statements } = expression.body;
  const last = statements[statements.length - 1];
  const before = last?.kind === "expression" ? statements.slice(0, -1) : statements;
  const held = { owner: expression.body, steps: [] };
  scope.destroyed.push(held);
  const body = lowerStatements(scope, before);
  scope.destroyed.pop();
  const value = last?.kind === "expression" ? whole(scope, last.expression) : "0";
  if (held.steps.length > 0)
    throw new CannotLower("an object with a destructor in an expression's braces", expression.at);
  if (/\b(return|break|continue)\b/.test(body))
    throw new CannotLower("a jump out of an expression", expression.at);
  return `(()=>{${body}return ${value};})()`;
}

function whole(scope: FunctionScope, expression: TypedExpression): string {
  if (shapeAt(scope, expression).kind === "object" && !isSilent(scope, expression.type))
    throw new CannotLower("an object of a class as the value of braces", expression.at);
  return wholeExpression(scope, () => lowerValue(scope, expression));
}
