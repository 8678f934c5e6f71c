import type { TypedExpression, Variable } from "../typed/nodes.ts";
import { sizeOf } from "../types/layout.ts";
import { evaluateIn, initialValue, type Run } from "./evaluate.ts";
import { type AddressBase, convertValue, type UnknownValue, unknown, type Value } from "./value.ts";

/** Where an object is: so many bytes from its base. */
export interface Location {
  readonly kind: "location";
  readonly base: AddressBase;
  readonly offset: bigint;
}

function moved(place: Location | UnknownValue, bytes: bigint): Location | UnknownValue {
  return place.kind === "unknown" ? place : { ...place, offset: place.offset + bytes };
}

/** Where an lvalue's object is, as far as constants tell. A bit-field is where its first byte is. */
export function locate(run: Run, expression: TypedExpression): Location | UnknownValue {
  switch (expression.kind) {
    case "variable":
      if (expression.variable.type.kind === "reference")
        return unknown("what the reference means is not known");
      return { kind: "location", base: { kind: "variable", variable: expression.variable }, offset: 0n };
    case "function":
      return { kind: "location", base: { kind: "function", function: expression.function }, offset: 0n };
    case "string":
      return { kind: "location", base: { kind: "string", literal: expression }, offset: 0n };
    case "member":
      return moved(locate(run, expression.object), BigInt(Math.floor(expression.field.bitOffset / 8)));
    case "index":
      return locateElement(run, expression);
    case "dereference":
      return pointedTo(evaluateIn(run, expression.operand).value);
    case "convert":
      return locateConverted(run, expression);
    case "comma":
      return locate(run, expression.right);
    default:
      return unknown("not an object with a fixed place");
  }
}

function pointedTo(pointer: Value): Location | UnknownValue {
  if (pointer.kind === "unknown") return pointer;
  if (pointer.kind !== "address") return unknown("not an address");
  return { kind: "location", base: pointer.base, offset: pointer.offset };
}

/** An object seen as another type is where it is; as a base class it is further in. */
function locateConverted(
  run: Run,
  expression: Extract<TypedExpression, { kind: "convert" }>,
): Location | UnknownValue {
  const { operand, type } = expression;
  if (expression.reason !== "base") {
    return expression.lvalue ? locate(run, operand) : unknown("a value, not an object");
  }
  const base =
    operand.type.kind === "record" && type.kind === "record"
      ? operand.type.record.bases.find((candidate) => candidate.record === type.record)
      : undefined;
  return moved(locate(run, operand), BigInt(base?.offset ?? 0));
}

function locateElement(
  run: Run,
  expression: Extract<TypedExpression, { kind: "index" }>,
): Location | UnknownValue {
  const { array, index } = expression;
  const position = evaluateIn(run, index).value;
  if (position.kind === "unknown") return position;
  const size = sizeOf(expression.type, run.model);
  if (position.kind !== "integer" || size === undefined)
    return unknown("the size of the elements is not known");
  const start = array.type.kind === "array" ? locate(run, array) : pointedTo(evaluateIn(run, array).value);
  return moved(start, position.value * BigInt(size));
}

/** Whether an object keeps its first value: `const` and not `volatile`, or `constexpr`. */
export function isConstant(variable: Variable): boolean {
  if (variable.constexpr) return true;
  let { type } = variable;
  while (type.kind === "array") type = type.of;
  return type.const === true && type.volatile !== true;
}

/** The value of a scalar variable: from the environment, or from the initialiser of a constant. */
export function readVariable(run: Run, variable: Variable): Value {
  const held = run.environment?.get(variable);
  if (held !== undefined) return held;
  if (!isConstant(variable)) return unknown(`\`${variable.name}\` is not constant`);
  const { initializer, type } = variable;
  if (initializer === undefined) return unknown(`the value of \`${variable.name}\` stands elsewhere`);
  if (type.kind === "reference") return unknown(`what \`${variable.name}\` refers to is not known`);
  if (initializer.kind === "value") {
    return convertValue(initialValue(run, initializer.value), type);
  }
  return unknown(`\`${variable.name}\` is an object, not a number`);
}
