import type { TypedExpression } from "../typed/nodes.ts";
import { integerTypeOf } from "../types/conversions.ts";
import { sizeOf } from "../types/layout.ts";
import type { Type } from "../types/types.ts";
import { callFunction, runStatementValue } from "./calls.ts";
import { evaluateConversion } from "./conversions.ts";
import { evaluateIn, type Run } from "./evaluate.ts";
import { locate, readVariable } from "./locate.ts";
import { readAt } from "./objects.ts";
import { evaluateArithmetic, evaluateCompare, evaluateUnary } from "./operators.ts";
import type { Evaluation } from "./problems.ts";
import { absolute, integerValue, sameBase, truth, unknown, type Value } from "./value.ts";

export function plain(value: Value, spoilt = false): Evaluation<Value> {
  return { value, problem: undefined, spoilt, exact: undefined };
}

/** One step of `evaluateIn`: the value of this node from those of its operands. */
export function evaluateAny(run: Run, expression: TypedExpression): Evaluation<Value> {
  switch (expression.kind) {
    case "integer":
      return plain(literalValue(expression.value, expression.type));
    case "floating":
      return expression.type.kind === "floating"
        ? plain({ kind: "floating", value: expression.value, type: expression.type })
        : plain(unknown("no floating type"));
    case "variable":
      return plain(readVariable(run, expression.variable));
    case "enumerator":
      return plain(enumeratorValue(expression));
    case "convert":
      return evaluateConversion(run, expression);
    case "negate":
    case "plus":
    case "complement":
    case "not":
      return evaluateUnary(run, expression);
    case "arithmetic":
      return evaluateArithmetic(run, expression);
    case "compare":
      return evaluateCompare(run, expression);
    case "logical":
      return evaluateLogical(run, expression);
    case "conditional":
      return evaluateConditional(run, expression);
    case "comma":
      return evaluateIn(run, expression.right);
    case "pointer-offset":
      return plain(pointerOffset(run, expression));
    case "pointer-difference":
      return plain(pointerDifference(run, expression));
    case "address":
      return plain(addressValue(run, expression.operand, expression.type));
    case "member":
    case "index":
    case "dereference":
      return plain(readObject(run, expression));
    case "call":
      return plain(callFunction(run, expression));
    case "statement-value":
      return plain(runStatementValue(run, expression.body));
    case "construct":
      return expression.initializer.kind === "value"
        ? evaluateIn(run, expression.initializer.value)
        : plain(unknown("an object, not a number"));
    case "string":
      return plain(unknown("a string, not a number"));
    case "unresolved":
      return plain(unknown(expression.what));
    case "assign":
    case "compound-assign":
    case "update":
      return plain(unknown("an assignment is not constant"));
    case "function":
    case "this":
    case "method-call":
    case "lambda":
    case "new":
    case "delete":
    case "further-arguments":
    case "next-argument":
      return plain(unknown("not known before the program runs"));
  }
}

function literalValue(value: bigint, type: Type): Value {
  const integer = integerTypeOf(type);
  if (integer !== undefined) return integerValue(value, integer);
  return type.kind === "pointer"
    ? { kind: "address", base: absolute, offset: value, type }
    : unknown("no integer type");
}

function enumeratorValue(expression: Extract<TypedExpression, { kind: "enumerator" }>): Value {
  const { value, name } = expression.enumerator;
  const type = integerTypeOf(expression.type);
  if (value === undefined || type === undefined) return unknown(`the value of \`${name}\` is not known`);
  return integerValue(value, type);
}

function evaluateLogical(
  run: Run,
  expression: Extract<TypedExpression, { kind: "logical" }>,
): Evaluation<Value> {
  const type = integerTypeOf(expression.type);
  const left = evaluateIn(run, expression.left);
  const leftTruth = truth(left.value);
  if (type === undefined) return plain(unknown("no truth value"));
  if (leftTruth === undefined) return left;
  const decides = expression.operator === "&&" ? !leftTruth : leftTruth;
  if (decides) return plain(integerValue(leftTruth ? 1n : 0n, type), left.spoilt);
  const right = evaluateIn(run, expression.right);
  const rightTruth = truth(right.value);
  if (rightTruth === undefined) return right;
  return plain(integerValue(rightTruth ? 1n : 0n, type), left.spoilt || right.spoilt);
}

function evaluateConditional(
  run: Run,
  expression: Extract<TypedExpression, { kind: "conditional" }>,
): Evaluation<Value> {
  const test = evaluateIn(run, expression.condition);
  const taken = truth(test.value);
  if (taken === undefined) return plain(test.value);
  const branch = evaluateIn(run, taken ? expression.then : expression.otherwise);
  return { ...branch, problem: undefined, spoilt: branch.spoilt || test.spoilt };
}

function pointerOffset(run: Run, expression: Extract<TypedExpression, { kind: "pointer-offset" }>): Value {
  const pointer = evaluateIn(run, expression.pointer).value;
  const offset = evaluateIn(run, expression.offset).value;
  if (pointer.kind === "unknown") return pointer;
  if (offset.kind === "unknown") return offset;
  const { type } = expression;
  const size = type.kind === "pointer" ? elementSize(type.to, run) : undefined;
  if (pointer.kind !== "address" || offset.kind !== "integer" || size === undefined) {
    return unknown("no address with a known step");
  }
  const step = offset.value * BigInt(size);
  return {
    ...pointer,
    offset: expression.operator === "+" ? pointer.offset + step : pointer.offset - step,
    type,
  };
}

/** GNU steps over `void` by one byte. */
function elementSize(type: Type, run: Run): number | undefined {
  return type.kind === "void" || type.kind === "function" ? 1 : sizeOf(type, run.model);
}

function pointerDifference(
  run: Run,
  expression: Extract<TypedExpression, { kind: "pointer-difference" }>,
): Value {
  const left = evaluateIn(run, expression.left).value;
  const right = evaluateIn(run, expression.right).value;
  if (left.kind === "unknown") return left;
  if (right.kind === "unknown") return right;
  const { type } = expression.left;
  const size = type.kind === "pointer" ? elementSize(type.to, run) : undefined;
  const result = integerTypeOf(expression.type);
  if (left.kind !== "address" || right.kind !== "address" || !sameBase(left.base, right.base)) {
    return unknown("the addresses belong to different objects");
  }
  if (size === undefined || size === 0 || result === undefined) return unknown("the step is not known");
  return integerValue((left.offset - right.offset) / BigInt(size), result);
}

/** The address of an object, as a value of a pointer type. */
export function addressValue(run: Run, object: TypedExpression, type: Type): Value {
  const place = locate(run, object);
  return place.kind === "unknown" ? place : { kind: "address", base: place.base, offset: place.offset, type };
}

function readObject(run: Run, expression: TypedExpression): Value {
  const place = locate(run, expression);
  if (place.kind === "unknown") return place;
  if (place.base.kind === "absolute")
    return unknown("a register or memory, not known before the program runs");
  return readAt(run, place, expression.type, bitFieldOf(expression));
}

function bitFieldOf(
  expression: TypedExpression,
): { readonly bit: number; readonly width: number } | undefined {
  if (expression.kind !== "member" || expression.field.bitWidth === undefined) return undefined;
  return { bit: expression.field.bitOffset % 8, width: expression.field.bitWidth };
}
