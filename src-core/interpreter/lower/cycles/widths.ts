import { evaluator } from "../../../reader/constants/evaluate.ts";
import type { TypedExpression } from "../../../reader/typed/nodes.ts";
import { integerTypeOf } from "../../../reader/types/conversions.ts";
import { sizeOf } from "../../../reader/types/layout.ts";
import type { DataModel, Type } from "../../../reader/types/types.ts";

/** What is known of values before they are computed: constants, and how many of their bits can be set. */
export class Widths {
  readonly model: DataModel;
  readonly #evaluate: ReturnType<typeof evaluator>;

  constructor(model: DataModel) {
    this.model = model;
    this.#evaluate = evaluator(model);
  }

  /** The value of an integer constant; undefined for all else. */
  constant(expression: TypedExpression): bigint | undefined {
    const { value } = this.#evaluate(expression);
    return value.kind === "integer" ? value.value : undefined;
  }

  isConstant(expression: TypedExpression): boolean {
    const { value } = this.#evaluate(expression);
    return value.kind === "integer" || value.kind === "floating" || value.kind === "address";
  }

  /** The address of a register; undefined for what is none. */
  register(place: TypedExpression): number | undefined {
    if (place.kind !== "dereference") return undefined;
    const { value } = this.#evaluate(place.operand);
    return value.kind === "address" && value.base.kind === "absolute" ? Number(value.offset) : undefined;
  }

  bytesOf(type: Type): number {
    switch (type.kind) {
      case "void":
      case "function":
        return 0;
      case "record":
      case "array":
      case "reference":
        return this.model.pointer / 8;
      default:
        return Math.min(8, sizeOf(type, this.model) ?? this.model.int / 8);
    }
  }

  /** Bytes of which the compiler does not know that they are zero. */
  bytes(expression: TypedExpression): number {
    return Math.ceil(this.bits(expression) / 8);
  }

  /** Low bits that may be set; all of a value that may be negative. */
  bits(expression: TypedExpression): number {
    const whole = this.bytesOf(expression.type) * 8;
    const constant = this.constant(expression);
    if (constant !== undefined) return constant < 0n ? whole : constant.toString(2).length;
    return Math.min(whole, this.#bitsOf(expression, whole));
  }

  #bitsOf(expression: TypedExpression, whole: number): number {
    switch (expression.kind) {
      case "compare":
      case "logical":
      case "not":
        return 1;
      case "member": {
        const { bitWidth, type } = expression.field;
        return bitWidth !== undefined && !isSigned(type) ? bitWidth : whole;
      }
      case "convert": {
        const { operand } = expression;
        const bits = this.bits(operand);
        const isNegative = isSigned(operand.type) && bits === this.bytesOf(operand.type) * 8;
        return integerTypeOf(operand.type) === undefined || isNegative ? whole : bits;
      }
      case "conditional":
        return Math.max(this.bits(expression.then), this.bits(expression.otherwise));
      case "comma":
        return this.bits(expression.right);
      case "arithmetic":
        return this.#arithmeticBits(expression, whole);
      default:
        return isBool(expression.type) ? 1 : whole;
    }
  }

  #arithmeticBits(
    { operator, left, right }: Extract<TypedExpression, { kind: "arithmetic" }>,
    whole: number,
  ): number {
    const bits = this.bits(left);
    const other = this.bits(right);
    const by = Number(this.constant(right) ?? -1n);
    const isWhole = bits >= whole;
    switch (operator) {
      case "&":
        return Math.min(bits, other);
      case "|":
      case "^":
        return Math.max(bits, other);
      case "+":
        return Math.max(bits, other) + 1;
      case "*":
        return bits + other;
      case "<<":
        return by < 0 ? whole : bits + by;
      case ">>":
        return by < 0 || (isWhole && isSigned(left.type)) ? bits : Math.max(1, bits - by);
      case "%":
        return isWhole && isSigned(left.type) ? whole : Math.min(bits, other);
      case "/":
        return bits;
      case "-":
        return whole;
    }
  }
}

export function isSigned(type: Type): boolean {
  return integerTypeOf(type)?.signed === true;
}

export function isFloating(type: Type): boolean {
  return type.kind === "floating";
}

function isBool(type: Type): boolean {
  return type.kind === "integer" && type.rank === "bool";
}
