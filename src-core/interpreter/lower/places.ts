import { evaluate } from "../../reader/constants/evaluate.ts";
import type { TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import { alignmentOf, sizeOf } from "../../reader/types/layout.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";
import { type BitPlace, loadedBits, storedBits } from "./bit-fields.ts";
import { isSilent } from "./copies.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { converted, loaded, type Shape, shapeOf, stored } from "./shape.ts";
import { temporaryObject } from "./temporaries.ts";
import { lowerValue, shapeAt, valueAs } from "./values.ts";

/** Where an lvalue is. Code of addresses may be used once only, unless it is a name or a number. */
export type Place =
  | { readonly kind: "name"; readonly name: string; readonly variable: Variable }
  | { readonly kind: "memory"; readonly address: string }
  | ({ readonly kind: "bits" } & BitPlace);

export function placeOf(scope: FunctionScope, expression: TypedExpression): Place {
  switch (expression.kind) {
    case "variable":
      return variablePlace(scope, expression.variable);
    case "string":
      return memory(String(scope.linkage.literalAddress(expression)));
    case "function":
      return memory(String(scope.linkage.functionPointer(expression.function)));
    case "this":
      return memory(scope.self);
    case "dereference":
      return memory(lowerValue(scope, expression.operand));
    case "member":
      return memberPlace(scope, expression);
    case "index":
      return memory(elementAddress(scope, expression));
    case "convert":
      if (expression.lvalue || expression.operand.type.kind === "record")
        return convertedPlace(scope, expression);
      break;
    case "comma":
      return memory(`(${lowerValue(scope, expression.left)},${addressOf(scope, expression.right)})`);
    case "conditional":
      if (!expression.lvalue) break;
      return memory(
        `(${lowerValue(scope, expression.condition)}?${addressOf(scope, expression.then)}:${addressOf(scope, expression.otherwise)})`,
      );
    case "assign":
    case "compound-assign":
      if (expression.type.kind === "record") break;
      return memory(`(${lowerValue(scope, expression)},${addressOf(scope, expression.target)})`);
    case "update":
      return memory(`(${lowerValue(scope, expression)},${addressOf(scope, expression.operand)})`);
    case "call":
    case "method-call":
      if (expression.lvalue) return memory(lowerValue(scope, expression, "reference"));
      break;
    case "construct":
      if (expression.type.kind !== "record") return memory(temporaryObject(scope, expression));
      break;
    default:
      break;
  }
  const shape = shapeAt(scope, expression);
  if (shape.kind === "object") return memory(lowerValue(scope, expression));
  return memory(temporaryScalar(scope, expression, shape));
}

function memory(address: string): Place {
  return { kind: "memory", address };
}

/** The address of an lvalue, or of a temporary that holds the value. */
export function addressOf(scope: FunctionScope, expression: TypedExpression): string {
  const place = placeOf(scope, expression);
  if (place.kind === "memory") return place.address;
  if (place.kind === "bits") throw new CannotLower("the address of a bit-field", expression.at);
  throw new CannotLower(`the address of \`${place.variable.name}\` here`, expression.at);
}

function variablePlace(scope: FunctionScope, variable: Variable): Place {
  const { storage } = variable;
  const isLocal = storage === "local" || storage === "parameter";
  if (!isLocal) {
    const address = scope.linkage.globalAddress(variable);
    return memory(variable.type.kind === "reference" ? pointerAt(scope, String(address)) : String(address));
  }
  const address = scope.addresses.get(variable);
  if (address !== undefined) return memory(address);
  const name = scope.names.get(variable);
  if (name === undefined) return constantPlace(scope, variable);
  return variable.type.kind === "reference" ? memory(name) : { kind: "name", name, variable };
}

/** A lambda may name constants of the function around it without capturing them (C++11 5.1.2p11, 3.2p2). */
function constantPlace(scope: FunctionScope, variable: Variable): Place {
  const { initializer, type } = variable;
  const { model } = scope.linkage;
  const value = type.const === true && initializer?.kind === "value" ? initializer.value : undefined;
  const shape = value && shapeOf(type, model);
  if (value === undefined || shape === undefined || evaluate(value, model).kind === "unknown")
    throw new CannotLower(`\`${variable.name}\` before its declaration`, variable.at);
  return memory(temporaryScalar(scope, value, shape));
}

function pointerAt(scope: FunctionScope, address: string): string {
  return `l${scope.linkage.model.pointer / 8}(${address},0)`;
}

function memberPlace(scope: FunctionScope, expression: Extract<TypedExpression, { kind: "member" }>): Place {
  const { field, object } = expression;
  const base = addressOf(scope, object);
  const offset = Math.floor(field.bitOffset / 8);
  const address = offset === 0 ? base : `(${base}+${offset})`;
  if (field.bitWidth !== undefined)
    return { kind: "bits", address, bit: field.bitOffset % 8, width: field.bitWidth };
  return memory(field.type.kind === "reference" ? pointerAt(scope, address) : address);
}

function elementAddress(
  scope: FunctionScope,
  expression: Extract<TypedExpression, { kind: "index" }>,
): string {
  const { array, index, type, at } = expression;
  const size = sizeOf(type, scope.linkage.model);
  if (size === undefined) throw new CannotLower("an element of unknown size", at);
  const position = indexValue(scope, index);
  if (array.type.kind !== "array") return address(scope, `${lowerValue(scope, array)}+${position}*${size}`);
  const { length } = array.type;
  const start = addressOf(scope, array);
  if (length === undefined || length === 0) return address(scope, `${start}+${position}*${size}`);
  return address(scope, `${start}+index(${position},${length},${scope.place(at)})*${size}`);
}

/** A whole number, whatever the type of the index. */
export function indexValue(scope: FunctionScope, index: TypedExpression): string {
  const code = lowerValue(scope, index);
  return shapeAt(scope, index).kind === "wide" ? `Number(BigInt.asIntN(32,${code}))` : code;
}

/** An address in the range of pointers. */
export function address(scope: FunctionScope, code: string): string {
  return scope.linkage.model.pointer === 16 ? `((${code})&65535)` : `((${code})>>>0)`;
}

function convertedPlace(
  scope: FunctionScope,
  expression: Extract<TypedExpression, { kind: "convert" }>,
): Place {
  const { operand, type } = expression;
  const from = operand.type;
  const isCopy = operand.lvalue && !expression.lvalue && expression.reason === "explicit";
  if (isCopy && type.kind === "record" && !isSilent(scope, type))
    return memory(temporaryObject(scope, expression));
  const place = placeOf(scope, operand);
  if (from.kind !== "record" || type.kind !== "record" || place.kind !== "memory") return place;
  const offset = classStep(from.record, type.record);
  return offset === 0 ? place : memory(`(${place.address}+${offset})`);
}

/** Bytes from an object to what it is seen as: its base, or with a minus sign what it is a base of. */
export function classStep(from: RecordDeclaration, to: RecordDeclaration): number {
  return baseOffset(from, to) ?? -(baseOffset(to, from) ?? 0);
}

function baseOffset(derived: RecordDeclaration, base: RecordDeclaration): number | undefined {
  if (derived === base) return 0;
  for (const { record, offset } of derived.bases) {
    const inner = baseOffset(record, base);
    if (inner !== undefined) return offset + inner;
  }
  return undefined;
}

function temporaryScalar(scope: FunctionScope, expression: TypedExpression, shape: Shape): string {
  const room = roomFor(scope, expression.type, expression);
  return `(${stored(shape, room, lowerValue(scope, expression), scope.place(expression.at))},${room})`;
}

export function roomFor(scope: FunctionScope, type: Type, expression: TypedExpression): string {
  const { model } = scope.linkage;
  const size = sizeOf(type, model);
  if (size === undefined) throw new CannotLower("an object of unknown size", expression.at);
  return scope.room(size, alignmentOf(type, model));
}

/** The value that an lvalue holds. */
export function readPlace(scope: FunctionScope, place: Place, expression: TypedExpression): string {
  const shape = shapeAt(scope, expression);
  const p = scope.place(expression.at);
  switch (place.kind) {
    case "name":
      if (!scope.unsure.has(place.variable)) return place.name;
      return `(${place.name}===undefined?${shape.kind === "wide" ? `BigInt(unset(${p}))` : `unset(${p})`}:${place.name})`;
    case "memory":
      return loaded(shape, place.address, p);
    case "bits":
      return loadedBits(place, shape, p);
  }
}

/** Writes a value of the lvalue's type; the code's value is what the lvalue then holds. */
export function writePlace(
  scope: FunctionScope,
  place: Place,
  type: Type,
  value: string,
  placeNumber: number,
): string {
  const shape = shapeOf(type, scope.linkage.model);
  if (shape === undefined) throw new Error("a place without a type");
  switch (place.kind) {
    case "name":
      return `(${place.name}=${value})`;
    case "memory":
      return stored(shape, place.address, value, placeNumber);
    case "bits":
      return storedBits(place, shape, value, scope.temporary(), placeNumber);
  }
}

/** An lvalue that is read and then written: its address is computed once. */
export function placeOnce(
  scope: FunctionScope,
  expression: TypedExpression,
): { readonly before: string; readonly place: Place } {
  const place = placeOf(scope, expression);
  if (place.kind === "name" || /^(\d+|self|\(f\+\d+\))$/.test(place.address)) return { before: "", place };
  const held = scope.temporary();
  return { before: `${held}=${place.address},`, place: { ...place, address: held } };
}

/** The address to which a reference of this type is bound. */
export function bound(scope: FunctionScope, expression: TypedExpression, to: Type): string {
  if (expression.lvalue) return addressOf(scope, expression);
  const shape = shapeAt(scope, expression);
  if (shape.kind === "object") return lowerValue(scope, expression);
  const target = shapeOf(to, scope.linkage.model);
  const room = roomFor(scope, to, expression);
  if (target === undefined || converted("", shape, target) === undefined)
    throw new CannotLower("a reference to this value", expression.at);
  return `(${stored(target, room, valueAs(scope, expression, target), scope.place(expression.at))},${room})`;
}
