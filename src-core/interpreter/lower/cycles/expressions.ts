import type { FunctionSymbol, TypedExpression, Variable } from "../../../reader/typed/nodes.ts";
import { expressionsOf, operandsOf } from "../../../reader/typed/walk.ts";
import { withoutConversions } from "../../../reader/typed/without-conversions.ts";
import type { Type } from "../../../reader/types/types.ts";
import { isFoldedDelay } from "../../library/delays.ts";
import { instructionNamed } from "../instruction-names.ts";
import { cost } from "./costs.ts";
import { operationCycles } from "./operations.ts";
import { isFloating, isSigned, type Widths } from "./widths.ts";

export interface Inlining {
  /** Whether the compiler puts the function's code in the place of its calls. */
  isInlined(symbol: FunctionSymbol): boolean;
}

/**
 * About how many cycles expressions take on an AVR as avr-gcc -Os compiles them: locals in registers, no more bytes
 * computed than are used and may differ from zero, constants in the instructions that use them.
 */
export class ExpressionCosts {
  readonly widths: Widths;
  readonly #inlining: Inlining;
  readonly #counters = new Set<Variable>();

  constructor(widths: Widths, inlining: Inlining) {
    this.widths = widths;
    this.#inlining = inlining;
  }

  /** What counts the turns of a loop: an element that it is the index of is reached by a pointer that counts along. */
  countsWith(counter: TypedExpression): void {
    if (counter.kind === "variable") this.#counters.add(counter.variable);
  }

  /** What each bit takes of a shift by this many; 0 where the count is a constant. */
  shiftTurn(type: Type, count: TypedExpression): number {
    return this.widths.isConstant(count)
      ? 0
      : this.widths.bytesOf(type) * cost.operationByte + cost.shiftTurn;
  }

  /** What an expression takes whose value nobody uses. */
  effect(expression: TypedExpression): number {
    switch (expression.kind) {
      case "assign":
        return this.#assigned(expression.target, expression.value);
      case "compound-assign":
      case "update":
        return this.#changed(expression);
      case "comma":
        return this.effect(expression.left) + this.effect(expression.right);
      case "convert":
        return this.effect(expression.operand);
      case "conditional":
        return (
          this.condition(expression.condition) +
          (this.effect(expression.then) + this.effect(expression.otherwise)) / 2
        );
      case "logical":
        return this.condition(expression.left) + this.effect(expression.right) / 2;
      case "variable":
      case "member":
      case "index":
      case "dereference":
        return isVolatile(expression) ? this.value(expression) : this.#address(expression);
      default:
        return this.value(expression);
    }
  }

  /** What it takes to have the low bytes of a value in registers, all of them where nothing else is said. */
  value(expression: TypedExpression, wanted = this.widths.bytesOf(expression.type)): number {
    const { widths } = this;
    if (widths.isConstant(expression)) return wanted * cost.constantByte;
    const bytes = Math.min(wanted, widths.bytes(expression));
    switch (expression.kind) {
      case "integer":
      case "floating":
      case "enumerator":
      case "string":
      case "function":
        return wanted * cost.constantByte;
      case "this":
        return 0;
      case "variable":
      case "member":
      case "index":
      case "dereference":
        return this.#loaded(expression, bytes);
      case "convert":
        return this.#converted(expression, expression.operand, bytes);
      case "address":
        return this.#address(expression.operand) + (expression.operand.kind === "dereference" ? 0 : 2);
      case "plus":
        return this.value(expression.operand, bytes);
      case "negate":
        return this.value(expression.operand, bytes) + (bytes > 1 ? bytes + 1 : 1);
      case "complement":
        return this.value(expression.operand, bytes) + bytes;
      case "not":
        return this.condition(expression.operand) - cost.branch + cost.truth;
      case "compare":
      case "logical":
        return this.condition(expression) - cost.branch + cost.truth;
      case "arithmetic":
        return this.#computed(expression, bytes);
      case "pointer-offset":
        return this.value(expression.pointer) + this.#offset(expression.offset, pointedTo(expression.type));
      case "pointer-difference":
        return this.value(expression.left) + this.value(expression.right) + 2;
      case "comma":
        return this.effect(expression.left) + this.value(expression.right, wanted);
      case "assign":
      case "compound-assign":
      case "update":
        return this.effect(expression);
      case "conditional":
        return (
          this.condition(expression.condition) +
          (this.value(expression.then, wanted) + this.value(expression.otherwise, wanted) + cost.jump) / 2
        );
      case "call":
      case "method-call":
        return this.#called(expression);
      case "construct":
        return expressionsOf(expression.initializer).reduce((sum, each) => sum + this.value(each), 0);
      case "new":
      case "delete":
        return cost.heap + this.#sum(operandsOf(expression));
      case "unresolved":
        return this.#ownFunction(expression);
      default:
        return this.#sum(operandsOf(expression));
    }
  }

  /** What it takes to branch on a value. */
  condition(expression: TypedExpression): number {
    const { widths } = this;
    if (widths.isConstant(expression)) return 0;
    switch (expression.kind) {
      case "not":
        return this.condition(expression.operand);
      case "convert":
        // Widened, or made a truth: the branch asks the same of what it was.
        if (isFloating(expression.operand.type)) break;
        return widths.bytesOf(expression.type) >= widths.bytesOf(expression.operand.type) ||
          widths.bits(expression) === 1
          ? this.condition(expression.operand)
          : this.value(expression) + cost.operationByte + cost.branch;
      case "logical":
        return this.condition(expression.left) + this.condition(expression.right) / 2;
      case "compare":
        return this.#compared(expression);
      case "arithmetic": {
        const bit = this.#testedBit(expression);
        if (bit !== undefined) return bit;
        break;
      }
      case "member":
        if (expression.field.bitWidth === 1)
          return this.#address(expression.object) + cost.memoryByte + cost.bitTest;
        break;
      default:
    }
    const bytes = widths.bytes(expression);
    return this.value(expression) + bytes * cost.operationByte + cost.branch;
  }

  /** `PIND & (1 << 2)`: one bit that is looked at where it is. */
  #testedBit(expression: Extract<TypedExpression, { kind: "arithmetic" }>): number | undefined {
    if (expression.operator !== "&") return undefined;
    const mask = this.widths.constant(expression.right);
    if (mask === undefined || !isSingleBit(mask)) return undefined;
    const from = withoutConversions(expression.left);
    const register = this.widths.register(from);
    if (register !== undefined && register < 0x40) return cost.bitTest;
    // Only the byte with the bit is needed.
    const byte = mask < 0x100n || isVolatile(from) ? this.value(expression.left, 1) : this.value(from, 1);
    return byte + cost.bitTest;
  }

  #compared({ operator, left, right }: Extract<TypedExpression, { kind: "compare" }>): number {
    const { widths } = this;
    if (isFloating(left.type)) return this.value(left) + this.value(right) + cost.floatCompare;
    const bytes = this.#comparedBytes(left, right);
    const constant = widths.constant(right);
    if (constant === 0n && (operator === "<" || operator === ">="))
      return this.value(left, bytes) + cost.bitTest;
    if (constant === undefined && !widths.isConstant(right))
      return this.value(left, bytes) + this.value(right, bytes) + bytes * cost.operationByte + cost.branch;
    // CPI for the lowest byte; each further one is compared with R1, or with a register that is loaded first.
    const further = bytes - 1;
    const loads = constant === 0n || (constant ?? 0n) < 256n ? 0 : further * cost.constantByte;
    return this.value(left, bytes) + bytes * cost.operationByte + loads + cost.branch;
  }

  /** Both sides as narrow as they were before they were promoted, where that has the same order. */
  #comparedBytes(left: TypedExpression, right: TypedExpression): number {
    const { widths } = this;
    const bytes = Math.max(widths.bytes(left), widths.bytes(right));
    const from = left.kind === "convert" ? left.operand : left;
    const own = widths.bytesOf(from.type);
    if (own >= bytes || !isSigned(from.type)) return bytes;
    const constant = widths.constant(right);
    const limit = 1n << BigInt(8 * own - 1);
    if (constant !== undefined) return constant >= -limit && constant < limit ? own : bytes;
    const to = right.kind === "convert" ? right.operand : right;
    return isSigned(to.type) && widths.bytesOf(to.type) <= own ? own : bytes;
  }

  #converted({ type }: TypedExpression, operand: TypedExpression, bytes: number): number {
    const { widths } = this;
    if (isFloating(type) !== isFloating(operand.type) && type.kind !== "void")
      return this.value(operand) + (isFloating(type) ? cost.intToFloat : cost.floatToInt);
    if (type.kind === "integer" && type.rank === "bool" && widths.bits(operand) > 1)
      return this.condition(operand) - cost.branch + cost.truth;
    if (operand.type.kind === "array" || operand.type.kind === "function")
      return this.#address(operand) + (isFixed(operand) ? cost.constantByte * 2 : 0);
    const own = widths.bytesOf(operand.type);
    const widened = bytes - own;
    if (widened <= 0 || !isSigned(operand.type) || widths.bits(operand) < own * 8)
      return this.value(operand, Math.min(bytes, own));
    return this.value(operand, own) + cost.signByte + (widened - 1) * cost.operationByte;
  }

  #computed(expression: Extract<TypedExpression, { kind: "arithmetic" }>, wanted: number): number {
    const { operator, left, right, type } = expression;
    const { widths } = this;
    const by = widths.constant(right);
    const needed = neededBytes(operator, wanted, by);
    const leftBytes = Math.min(needed, widths.bytesOf(left.type));
    const operation = operationCycles(operator, type, wanted, left, right, widths);
    const second = by !== undefined ? 0 : this.value(right, Math.min(needed, widths.bytesOf(right.type)));
    // A constant on the left is loaded where it is not just the other operand.
    const first = widths.isConstant(left) && isCommutative(operator) ? 0 : this.value(left, leftBytes);
    return first + second + operation;
  }

  /** A value that is loaded from where it is; registers have it already. */
  #loaded(place: TypedExpression, bytes: number): number {
    if (isObject(place.type)) return this.#address(place);
    if (isInRegister(place)) return 0;
    const { widths } = this;
    const loads = isVolatile(place) ? widths.bytesOf(place.type) : bytes;
    const register = widths.register(place);
    if (register !== undefined) return loads * registerByte(register);
    if (place.kind === "member" && place.field.bitWidth !== undefined) {
      const { bitWidth, bitOffset } = place.field;
      const pieces = Math.ceil(((bitOffset % 8) + bitWidth) / 8);
      const shifted = bitWidth === 1 ? 2 : Math.min(bitOffset % 8, 3) + 1;
      return this.#address(place.object) + pieces * (cost.memoryByte + shifted);
    }
    return this.#address(place) + loads * cost.memoryByte;
  }

  /** What it takes to get at an object: nothing where its address is in the instructions. */
  #address(place: TypedExpression): number {
    switch (place.kind) {
      case "variable":
        return place.variable.type.kind === "reference" ? cost.pointer : 0;
      case "member":
        return this.#address(place.object);
      case "dereference": {
        const { operand } = place;
        if (this.widths.register(place) !== undefined || operand.kind === "this") return 0;
        // LD with the pointer counted on.
        if (operand.kind === "update") return 0;
        return isInRegister(operand) ? cost.pointer : this.value(operand);
      }
      case "index": {
        const { array, index } = place;
        const base = isFixed(withoutConversions(array)) ? 0 : this.value(array);
        return (
          base +
          (this.#counts(index)
            ? isFixed(withoutConversions(array))
              ? 0
              : cost.countedIndex
            : this.#offset(index, place.type))
        );
      }
      case "convert":
        return this.#address(place.operand);
      default:
        return this.value(place);
    }
  }

  #counts(index: TypedExpression): boolean {
    const counter = withoutConversions(index);
    return counter.kind === "variable" && this.#counters.has(counter.variable);
  }

  /** An index added to an address; elements of more bytes have it shifted. */
  #offset(index: TypedExpression, element: Type | undefined): number {
    if (this.widths.isConstant(index)) return 0;
    const bytes = element === undefined ? 1 : this.widths.bytesOf(element);
    const scaled = bytes <= 1 ? 0 : bytes <= 2 ? 2 : 4;
    return this.value(index, this.widths.bytes(index)) + cost.index + scaled;
  }

  #assigned(target: TypedExpression, value: TypedExpression): number {
    const { widths } = this;
    if (isObject(target.type)) return this.value(value) + 2 * cost.memoryByte * widths.bytesOf(target.type);
    const bytes = widths.bytesOf(target.type);
    if (isInRegister(target)) return this.value(value, bytes) + (isInRegister(value) ? bytes / 2 : 0);
    // R1 is always zero.
    const given = widths.constant(value) === 0n ? 0 : this.value(value, bytes);
    return given + this.#stored(target);
  }

  #stored(target: TypedExpression): number {
    const { widths } = this;
    const bytes = widths.bytesOf(target.type);
    const register = widths.register(target);
    if (register !== undefined) return bytes * registerByte(register);
    if (target.kind === "member" && target.field.bitWidth !== undefined) {
      // Loaded, masked, the value shifted to its place, stored.
      const shifted = target.field.bitWidth === 1 ? 2 : 1 + (target.field.bitOffset % 8);
      return this.#address(target.object) + 2 * cost.memoryByte + 1 + shifted;
    }
    return this.#address(target) + bytes * cost.memoryByte;
  }

  #changed(expression: Extract<TypedExpression, { kind: "compound-assign" | "update" }>): number {
    const { widths } = this;
    const isUpdate = expression.kind === "update";
    const target = isUpdate ? expression.operand : expression.target;
    const bytes = widths.bytesOf(target.type);
    const register = widths.register(target);
    const operation = isUpdate ? bytes * cost.operationByte : this.#changedBy(expression, bytes, register);
    if (operation === undefined) return cost.portBit;
    if (isInRegister(target)) return operation;
    if (register !== undefined) return 2 * bytes * registerByte(register) + operation;
    if (target.kind === "member" && target.field.bitWidth !== undefined)
      return this.#loaded(target, bytes) + operation + this.#stored(target);
    return this.#address(target) + 2 * bytes * cost.memoryByte + operation;
  }

  /** The operation of a compound assignment with its second operand; undefined where SBI or CBI does it. */
  #changedBy(
    { operator, target, value, computeIn }: Extract<TypedExpression, { kind: "compound-assign" }>,
    bytes: number,
    register: number | undefined,
  ): number | undefined {
    const { widths } = this;
    const constant = widths.constant(value);
    if (constant !== undefined && register !== undefined && register < 0x40 && bytes === 1) {
      const bits = BigInt.asUintN(8, operator === "&" ? ~constant : constant);
      if ((operator === "&" || operator === "|") && isSingleBit(bits)) return undefined;
    }
    const needed = neededBytes(operator, bytes, constant);
    const given =
      constant !== undefined ? 0 : this.value(value, Math.min(needed, widths.bytesOf(value.type)));
    const conversion =
      isFloating(computeIn) && !isFloating(target.type) ? cost.intToFloat + cost.floatToInt : 0;
    return given + conversion + operationCycles(operator, computeIn, bytes, target, value, widths);
  }

  #ownFunction({ name, operands }: Extract<TypedExpression, { kind: "unresolved" }>): number {
    if (instructionNamed(name) !== undefined) return cost.instruction;
    return isFoldedDelay(name) ? 0 : this.#sum(operands);
  }

  #called(call: Extract<TypedExpression, { kind: "call" | "method-call" }>): number {
    const callee = call.kind === "method-call" ? call.method : directCallee(call.callee);
    if (callee?.standIn === true && isFoldedDelay(callee.name)) return 0;
    if (callee?.standIn === true && instructionNamed(callee.name) !== undefined) return cost.instruction;
    const given = call.kind === "method-call" ? [call.object, ...call.arguments] : call.arguments;
    if (
      callee !== undefined &&
      this.#inlining.isInlined(callee) &&
      !(call.kind === "method-call" && call.virtual)
    )
      return given.reduce((sum, each) => sum + this.#taken(each), 0);
    const handed = given.reduce((sum, each) => {
      const moved = isInRegister(each) ? this.widths.bytesOf(each.type) * cost.argumentByte : 0;
      return sum + this.#given(each) + moved;
    }, 0);
    if (call.kind === "method-call")
      return handed + (isFixed(call.object) ? 2 : 0) + (call.virtual ? cost.virtualCall : 0);
    return handed + (callee === undefined ? this.value(call.callee) + cost.pointerCall : 0);
  }

  /** An argument of a function that is inlined: its parameter is just another name. */
  #taken(argument: TypedExpression): number {
    if (this.widths.isConstant(argument)) return 0;
    // The function itself branches on it.
    if (argument.kind === "convert" && argument.type.kind === "integer" && argument.type.rank === "bool")
      return Math.max(0, this.condition(argument.operand) - cost.bitTest);
    return this.#given(argument);
  }

  #given(argument: TypedExpression): number {
    return argument.lvalue && isObject(argument.type) ? this.#address(argument) : this.value(argument);
  }

  #sum(expressions: readonly TypedExpression[]): number {
    return expressions.reduce((sum, each) => sum + this.value(each), 0);
  }
}

/** Bytes of the operands that the low bytes of a result depend on. */
function neededBytes(operator: string, wanted: number, by: bigint | undefined): number {
  switch (operator) {
    case "+":
    case "-":
    case "*":
    case "&":
    case "|":
    case "^":
      return wanted;
    case "<<":
      return by === undefined ? 8 : Math.max(1, wanted - Number(by / 8n));
    case ">>":
      return by === undefined ? 8 : wanted + Math.ceil(Number(by) / 8);
    default:
      return 8;
  }
}

export function directCallee(callee: TypedExpression): FunctionSymbol | undefined {
  if (callee.kind === "function") return callee.function;
  if (callee.kind === "convert" || callee.kind === "dereference") return directCallee(callee.operand);
  return undefined;
}

function registerByte(address: number): number {
  return address < 0x60 ? cost.portByte : cost.memoryByte;
}

/** A local that is a number or a pointer. */
function isInRegister(expression: TypedExpression): boolean {
  if (expression.kind === "convert") return isInRegister(expression.operand);
  if (expression.kind === "this") return true;
  if (expression.kind !== "variable") return false;
  const { storage, type } = expression.variable;
  return (storage === "local" || storage === "parameter") && !isObject(type) && type.kind !== "reference";
}

/** An object whose address the linker knows. */
function isFixed(expression: TypedExpression): boolean {
  if (expression.kind === "member") return isFixed(expression.object);
  if (expression.kind === "index") return isFixed(withoutConversions(expression.array));
  if (expression.kind === "string") return true;
  if (expression.kind !== "variable" || expression.variable.type.kind === "reference") return false;
  const { storage } = expression.variable;
  return storage !== "local" && storage !== "parameter";
}

function isVolatile({ type }: TypedExpression): boolean {
  return "volatile" in type && type.volatile === true;
}

function isObject({ kind }: Type): boolean {
  return kind === "record" || kind === "array";
}

function pointedTo(type: Type): Type | undefined {
  return type.kind === "pointer" ? type.to : undefined;
}

function isSingleBit(value: bigint): boolean {
  return value > 0n && (value & (value - 1n)) === 0n;
}

function isCommutative(operator: string): boolean {
  return ["+", "*", "&", "|", "^"].includes(operator);
}
