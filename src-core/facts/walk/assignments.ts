import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { Field, Type } from "../../reader/types/types.ts";
import { addressOf, evaluate, isWhole } from "./expressions.ts";
import { load, store } from "./load-store.ts";
import { arrayNamedBy, neighbour, placeNamedBy, pointedTo } from "./lvalues.ts";
import type { Machine } from "./machine.ts";
import { arithmetic, converted } from "./operators.ts";
import type { Place } from "./places.ts";
import { integer, unknown, unknownOf } from "./unknowns.ts";
import { integerOf, type Value } from "./values.ts";

export function evaluateUpdate(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "update" }>,
): Value {
  const place = placeNamedBy(machine, expression.operand);
  if (place === undefined) return unknownOf(expression.type, expression);
  const old = load(machine, place, expression.at);
  const by = expression.operator === "++" ? 1 : -1;
  const moved = old.kind === "address" ? neighbour(machine, old.place, by) : undefined;
  const next =
    old.kind === "address"
      ? addressOf(moved, expression)
      : arithmetic("+", old, integer(by, undefined), expression.operand.type, expression);
  store(machine, place, next, expression.at);
  return expression.position === "prefix" ? next : old;
}

export function evaluateAssignment(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "assign" }>,
): Value {
  const { target } = expression;
  const value = evaluate(machine, expression.value);
  const place = placeNamedBy(machine, target);
  if (place === undefined) {
    forgetArray(machine, target);
    return value;
  }
  if (isWhole(target)) copyObject(machine, value, place);
  else store(machine, place, value, expression.at);
  return value;
}

/** Copies an object with its parts, as far as they are known. */
export function copyObject(machine: Machine, from: Value, to: Place): void {
  const { memory } = machine;
  const source = from.kind === "address" ? from.place : undefined;
  memory.overwrite(to, unknown(from.from));
  if (source === undefined || source === to) return;
  for (const [key, part] of partsOf(machine, source)) {
    const copy = typeof key === "number" ? memory.element(to, key) : memory.member(to, key);
    if (isObject(part)) copyObject(machine, { kind: "address", place: part, from: undefined }, copy);
    else
      memory.write(
        copy,
        machine.quietly(() => load(machine, part, nowhere(from))),
      );
  }
}

/** All members of an object, met before or not; of an array, or of a base class, those that were met. */
function partsOf({ memory }: Machine, object: Place): readonly (readonly [Field | number, Place])[] {
  if (object.type?.kind === "record") {
    for (const field of object.type.record.fields) memory.member(object, field);
  }
  return [...(object.children ?? [])];
}

function isObject({ type, children }: Place): boolean {
  return children !== undefined || type?.kind === "record" || type?.kind === "array";
}

function nowhere(value: Value): TypedExpression["at"] {
  return value.from?.at ?? { first: missing, last: missing };
}

const missing = {
  kind: "other",
  text: "",
  file: "",
  start: 0,
  end: 0,
  space: false,
  macro: undefined,
} as const;

/** A write to an element of unknown index may change any element. */
function forgetArray(machine: Machine, target: TypedExpression): void {
  const array = arrayNamedBy(machine, target);
  if (array === undefined) return;
  machine.memory.overwrite(array, unknown(target));
}

export function evaluateCompound(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "compound-assign" }>,
): Value {
  const { operator, target } = expression;
  const operand = evaluate(machine, expression.value);
  const place = placeNamedBy(machine, target);
  if (place === undefined) {
    forgetArray(machine, target);
    return unknownOf(target.type, expression);
  }
  const isRegister = place.root.kind === "register";
  const old = isRegister
    ? machine.quietly(() => load(machine, place, expression.at))
    : load(machine, place, expression.at);
  let value: Value;
  if (old.kind === "address") {
    const offset = integerOf(operand);
    const moved =
      offset === undefined ? undefined : neighbour(machine, old.place, operator === "+" ? offset : -offset);
    value = addressOf(moved, expression);
  } else {
    const computeIn = typeToComputeIn(expression.computeIn, place);
    const computed = arithmetic(operator, converted(old, computeIn), operand, computeIn, expression);
    value = converted(computed, target.type);
  }
  const form = operator === "|" ? "|=" : operator === "&" ? "&=" : operator === "^" ? "^=" : "other";
  store(machine, place, value, expression.at, form, operand);
  return value;
}

/** A register whose header is missing has no type, but it has bits. */
function typeToComputeIn(type: Type, place: Place): Type {
  if (type.kind !== "unknown" || place.root.kind !== "register") return type;
  const { bits } = place.root.register;
  return { kind: "integer", rank: bits === 8 ? "char" : "int", bits, signed: false, name: "register" };
}

/** What a pointer argument points to may be changed by a function that is not in the project. */
export function forgetPointee(machine: Machine, pointer: Value): void {
  const place = pointedTo(machine, pointer);
  if (place === undefined || place.root.kind === "register") return;
  const whole = typeof place.key === "number" && place.of !== undefined ? place.of : place;
  machine.memory.overwrite(whole, unknown(pointer.from));
}
