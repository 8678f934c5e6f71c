import type { TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { operandsOf } from "../../reader/typed/walk.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { DataModel, Type } from "../../reader/types/types.ts";

/**
 * About how many cycles of an AVR an expression takes, as avr-gcc -Os compiles it: locals in registers, one cycle for
 * each byte of an addition, two for each byte that is loaded or stored. Cycle counts of single instructions are those
 * of the AVR Instruction Set Manual; how they are put together is an estimate, whose error is measured against
 * compiled code.
 */
export function expressionCycles(expression: TypedExpression, model: DataModel): number {
  let cycles = ownCycles(expression, model);
  if (expression.kind === "conditional") {
    const { condition, then, otherwise } = expression;
    const branches = expressionCycles(then, model) + expressionCycles(otherwise, model);
    return cycles + expressionCycles(condition, model) + Math.ceil(branches / 2);
  }
  if (expression.kind === "logical") {
    // The second operand is looked at in about half of the cases.
    return (
      cycles +
      expressionCycles(expression.left, model) +
      Math.ceil(expressionCycles(expression.right, model) / 2)
    );
  }
  if (isRegisterBit(expression)) return cycles;
  for (const operand of operandsOf(expression)) cycles += expressionCycles(operand, model);
  return cycles;
}

/** What a statement itself takes, without the statements in it. */
export function statementCycles(statement: TypedStatement, model: DataModel): number {
  switch (statement.kind) {
    case "expression":
      return expressionCycles(statement.expression, model);
    case "variables":
      return statement.variables.reduce((sum, { initializer }) => {
        if (initializer?.kind !== "value") return sum + (initializer === undefined ? 0 : 4);
        return sum + expressionCycles(initializer.value, model) + 1;
      }, 0);
    case "if":
    case "switch":
    case "while":
    case "do":
      return branch + expressionCycles(statement.condition, model);
    case "for":
      return (
        branch +
        (statement.condition === undefined ? 0 : expressionCycles(statement.condition, model)) +
        (statement.step === undefined ? 0 : expressionCycles(statement.step, model))
      );
    case "return":
      return statement.value === undefined ? 0 : expressionCycles(statement.value, model);
    case "break":
    case "continue":
    case "goto":
      return jumpCycles;
    default:
      return 0;
  }
}

/** Conditional branches take one cycle or two. */
const branch = 2;
const jumpCycles = 2;
/** CALL, RET, and what a callee saves of the registers. */
export const callCycles = 10;

function ownCycles(expression: TypedExpression, model: DataModel): number {
  const bytes = bytesOf(expression.type, model);
  switch (expression.kind) {
    case "integer":
    case "floating":
    case "enumerator":
    case "string":
    case "function":
    case "this":
      return 0;
    case "variable": {
      const { storage } = expression.variable;
      const isLocal = storage === "local" || storage === "parameter";
      return isLocal || expression.type.kind === "array" || expression.type.kind === "record" ? 0 : 2 * bytes;
    }
    case "member":
      return expression.type.kind === "array" || expression.type.kind === "record"
        ? 0
        : 2 * bytes + (expression.field.bitWidth === undefined ? 0 : 3);
    case "dereference":
      return isRegister(expression) ? 1 : 2 * bytes;
    case "index":
      return 2 * bytes + (expression.index.kind === "integer" ? 0 : 3);
    case "negate":
    case "plus":
    case "complement":
      return isFloating(expression.type) ? 2 : bytes;
    case "not":
      return 2;
    case "update":
      return bytes + storeCycles(expression.operand, model);
    case "arithmetic":
      return arithmeticCycles(expression.operator, expression.type, expression.right, model);
    case "pointer-offset":
      return expression.offset.kind === "integer" ? 2 : 4;
    case "pointer-difference":
      return 2;
    case "compare": {
      const compared = bytesOf(expression.left.type, model);
      return isFloating(expression.left.type) ? 60 : compared + 1;
    }
    case "logical":
      return 2;
    case "assign":
      if (isRegisterBit(expression)) return 2;
      return storeCycles(expression.target, model);
    case "compound-assign":
      if (isRegisterBit(expression)) return 2;
      return (
        arithmeticCycles(expression.operator, expression.computeIn, expression.value, model) +
        storeCycles(expression.target, model)
      );
    case "conditional":
      return branch;
    case "call":
    case "method-call":
      return callCycles;
    case "convert": {
      const from = bytesOf(expression.operand.type, model);
      if (isFloating(expression.type) !== isFloating(expression.operand.type)) return 60;
      return bytes > from && from > 0 ? bytes - from : 0;
    }
    case "new":
    case "delete":
      return 150;
    default:
      return 0;
  }
}

function storeCycles(target: TypedExpression, model: DataModel): number {
  if (target.kind === "variable") {
    const { storage } = target.variable;
    if (storage === "local" || storage === "parameter") return 1;
  }
  // Reading it is counted among the operands, at the same price.
  return isRegister(target) ? 0 : bytesOf(target.type, model);
}

function arithmeticCycles(operator: string, type: Type, right: TypedExpression, model: DataModel): number {
  const bytes = bytesOf(type, model);
  if (isFloating(type)) return operator === "/" ? 470 : operator === "*" ? 150 : 110;
  switch (operator) {
    case "*":
      return bytes === 1 ? 3 : bytes === 2 ? 10 : 40;
    case "/":
    case "%":
      if (isPowerOfTwo(right)) return 2 * bytes;
      return bytes === 1 ? 85 : bytes === 2 ? 210 : 620;
    case "<<":
    case ">>": {
      if (right.kind !== "integer" && !(right.kind === "convert" && right.operand.kind === "integer"))
        return 3 + (bytes + 3) * 4;
      const count = Number(
        right.kind === "integer"
          ? right.value
          : right.kind === "convert" && right.operand.kind === "integer"
            ? right.operand.value
            : 0n,
      );
      return Math.min(count % 8, 4) * bytes + (count >= 8 ? bytes : 0);
    }
    default:
      return bytes;
  }
}

function isPowerOfTwo(expression: TypedExpression): boolean {
  const inner = expression.kind === "convert" ? expression.operand : expression;
  return inner.kind === "integer" && inner.value > 0n && (inner.value & (inner.value - 1n)) === 0n;
}

function isFloating(type: Type): boolean {
  return type.kind === "floating";
}

function bytesOf(type: Type, model: DataModel): number {
  if (type.kind === "void" || type.kind === "function") return 0;
  if (type.kind === "record" || type.kind === "array") return 2;
  return Math.min(8, sizeOf(type, model) ?? 2);
}

/** A register by its address: IN and OUT take one cycle, LDS and STS two. */
function isRegister(target: TypedExpression): boolean {
  if (target.kind !== "dereference") return false;
  const { operand } = target;
  return operand.kind === "convert" && operand.type.kind === "pointer" && operand.operand.kind !== "variable";
}

/** `PORTB |= 1 << 3` and `PORTB &= ~(1 << 3)` are one instruction. */
function isRegisterBit(expression: TypedExpression): boolean {
  if (expression.kind !== "compound-assign" || !isRegister(expression.target)) return false;
  return (expression.operator === "|" || expression.operator === "&") && isConstant(expression.value);
}

function isConstant(expression: TypedExpression): boolean {
  if (expression.kind === "integer" || expression.kind === "enumerator") return true;
  if (expression.kind === "variable" || expression.kind === "call" || expression.kind === "method-call")
    return false;
  const operands = operandsOf(expression);
  return operands.length > 0 && operands.every(isConstant);
}
