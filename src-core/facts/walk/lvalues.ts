import { isStandIn } from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { Type } from "../../reader/types/types.ts";
import { evaluate } from "./expressions.ts";
import { initialize } from "./initializers.ts";
import { heldValue } from "./load-store.ts";
import type { Machine } from "./machine.ts";
import type { Place } from "./places.ts";
import { truthOf } from "./unknowns.ts";
import { integerOf, type Value } from "./values.ts";

/** The place that an lvalue names, doing what is done to find it; undefined where that is not known. */
export function placeNamedBy(machine: Machine, expression: TypedExpression): Place | undefined {
  switch (expression.kind) {
    case "variable": {
      const place = registerOfVariable(machine, expression) ?? machine.placeOf(expression.variable);
      return expression.variable.type.kind === "reference"
        ? pointedTo(machine, heldValue(machine, place))
        : place;
    }
    case "member": {
      const object = placeNamedBy(machine, expression.object);
      const member = object && machine.memory.member(object, expression.field);
      return member !== undefined && expression.field.type.kind === "reference"
        ? pointedTo(machine, heldValue(machine, member))
        : member;
    }
    case "dereference":
      return pointedTo(machine, evaluate(machine, expression.operand), expression.type);
    case "index":
      return elementNamedBy(machine, expression);
    case "convert":
      return placeNamedBy(machine, expression.operand);
    case "assign":
    case "compound-assign":
      evaluate(machine, expression);
      return placeNamedBy(machine, expression.target);
    case "update":
      evaluate(machine, expression);
      return placeNamedBy(machine, expression.operand);
    case "comma":
      evaluate(machine, expression.left);
      return placeNamedBy(machine, expression.right);
    case "conditional": {
      const truth = truthOf(evaluate(machine, expression.condition));
      if (truth === undefined) return undefined;
      return placeNamedBy(machine, truth ? expression.then : expression.otherwise);
    }
    case "string":
      return machine.memory.stringPlace(expression);
    case "construct": {
      const place = machine.memory.temporary(expression.type, machine.active.length);
      initialize(machine, place, expression.initializer);
      return place;
    }
    case "unresolved":
      return unresolvedRegister(machine, expression);
    case "call":
    case "method-call":
      return pointedTo(machine, evaluate(machine, expression));
    default:
      return undefined;
  }
}

/** Stand-in headers may declare a register as a variable of its name. */
function registerOfVariable(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "variable" }>,
): Place | undefined {
  const { variable } = expression;
  if (
    variable.storage !== "global" ||
    variable.type.volatile !== true ||
    variable.initializer !== undefined
  ) {
    return undefined;
  }
  const isOwn = !isStandIn(variable.at.first.file);
  if (isOwn && machine.memory.knownPlaceOf(variable) !== undefined) return undefined;
  const register = machine.hardware.registerNamed(variable.name);
  return register && machine.memory.registerPlace(register, machine.hardware.isLatch(register));
}

/** A register whose header is missing: its name still says what it is. */
function unresolvedRegister(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "unresolved" }>,
): Place | undefined {
  if (expression.form !== "name") return undefined;
  const register = machine.hardware.registerNamed(expression.name);
  return register && machine.memory.registerPlace(register, machine.hardware.isLatch(register));
}

/** The place behind a pointer or reference; `type` is that of the object, for registers by address. */
export function pointedTo(machine: Machine, pointer: Value, type?: Type): Place | undefined {
  if (pointer.kind === "address") return pointer.place;
  const address = integerOf(pointer);
  if (address === undefined || type === undefined) return undefined;
  const bits = type.kind === "integer" ? type.bits : 8;
  const register = machine.hardware.registerAt(address, bits);
  return register && machine.memory.registerPlace(register, machine.hardware.isLatch(register));
}

function elementNamedBy(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "index" }>,
): Place | undefined {
  const { array } = expression;
  const base =
    array.type.kind === "array" ? placeNamedBy(machine, array) : pointedTo(machine, evaluate(machine, array));
  const index = integerOf(evaluate(machine, expression.index));
  if (base === undefined || index === undefined) return undefined;
  return array.type.kind === "array" ? machine.memory.element(base, index) : neighbour(machine, base, index);
}

/** The element `by` places further on in the same array; `by` 0 is the place itself. */
export function neighbour(machine: Machine, place: Place, by: number): Place | undefined {
  if (by === 0) return place;
  if (place.of === undefined || typeof place.key !== "number") return undefined;
  return machine.memory.element(place.of, place.key + by);
}

/** The array that an element of unknown index belongs to, so that a write to it can be told. */
export function arrayNamedBy(machine: Machine, expression: TypedExpression): Place | undefined {
  if (expression.kind === "member") return arrayNamedBy(machine, expression.object);
  if (expression.kind !== "index") return undefined;
  const { array } = expression;
  if (array.type.kind === "array") return machine.quietly(() => placeNamedBy(machine, array));
  return machine.quietly(() => pointedTo(machine, evaluate(machine, array)))?.of;
}
