import { roundTo } from "../typed/literals.ts";
import type { FunctionSymbol, TypedExpression, Variable } from "../typed/nodes.ts";
import { integerTypeOf } from "../types/conversions.ts";
import type { FloatingType, IntegerType, Type } from "../types/types.ts";

/** What an address counts from: nothing (a number as in `*(volatile uint8_t *)0x25`), or an object. */
export type AddressBase =
  | { readonly kind: "absolute" }
  | { readonly kind: "variable"; readonly variable: Variable }
  | { readonly kind: "function"; readonly function: FunctionSymbol }
  | { readonly kind: "string"; readonly literal: Extract<TypedExpression, { kind: "string" }> };

export type IntegerValue = {
  readonly kind: "integer";
  readonly value: bigint;
  readonly type: IntegerType;
};

export type AddressValue = {
  readonly kind: "address";
  readonly base: AddressBase;
  /** Bytes from the base; the address itself where the base is absolute. */
  readonly offset: bigint;
  /** The pointer type. */
  readonly type: Type;
};

/** The value of an expression on the target, or why it is not known. */
export type Value =
  | IntegerValue
  | { readonly kind: "floating"; readonly value: number; readonly type: FloatingType }
  | AddressValue
  | { readonly kind: "unknown"; readonly reason: string };

export type UnknownValue = Extract<Value, { kind: "unknown" }>;

export function unknown(reason: string): UnknownValue {
  return { kind: "unknown", reason };
}

/** The value as an integer type keeps it (C11 6.3.1.3): modulo its range; `bool` keeps 0 or 1. */
export function wrap(value: bigint, type: IntegerType): bigint {
  if (type.rank === "bool") return value === 0n ? 0n : 1n;
  return type.signed ? BigInt.asIntN(type.bits, value) : BigInt.asUintN(type.bits, value);
}

export function integerValue(value: bigint, type: IntegerType): IntegerValue {
  return { kind: "integer", value: wrap(value, type), type };
}

export const absolute: AddressBase = { kind: "absolute" };

export function sameBase(a: AddressBase, b: AddressBase): boolean {
  switch (a.kind) {
    case "absolute":
      return b.kind === "absolute";
    case "variable":
      return b.kind === "variable" && a.variable === b.variable;
    case "function":
      return b.kind === "function" && a.function === b.function;
    case "string":
      return b.kind === "string" && a.literal === b.literal;
  }
}

/** Whether a value counts as true; undefined where that is not known. */
export function truth(value: Value): boolean | undefined {
  switch (value.kind) {
    case "integer":
      return value.value !== 0n;
    case "floating":
      return value.value !== 0;
    case "address":
      return value.base.kind !== "absolute" || value.offset !== 0n;
    case "unknown":
      return undefined;
  }
}

/** A value converted to another type (C11 6.3.1.2 to 6.3.2.3). Out of range floating values saturate. */
export function convertValue(value: Value, type: Type): Value {
  if (value.kind === "unknown") return value;
  const integer = integerTypeOf(type);
  if (integer !== undefined) return toInteger(value, integer);
  if (type.kind === "floating") return toFloating(value, type);
  if (type.kind === "pointer") return toPointer(value, type);
  return unknown("no value of a scalar type");
}

function toInteger(value: Exclude<Value, UnknownValue>, type: IntegerType): Value {
  switch (value.kind) {
    case "integer":
      return integerValue(value.value, type);
    case "floating":
      return fromFloating(value.value, type);
    case "address":
      if (type.rank === "bool") return integerValue(truth(value) === true ? 1n : 0n, type);
      if (value.base.kind !== "absolute") return unknown("the linker decides this address");
      return integerValue(value.offset, type);
  }
}

function fromFloating(value: number, type: IntegerType): Value {
  if (type.rank === "bool") return integerValue(value === 0 ? 0n : 1n, type);
  if (Number.isNaN(value)) return integerValue(0n, type);
  const least = type.signed ? -(1n << BigInt(type.bits - 1)) : 0n;
  const most = (1n << BigInt(type.signed ? type.bits - 1 : type.bits)) - 1n;
  if (value <= Number(least)) return integerValue(least, type);
  if (value >= Number(most)) return integerValue(most, type);
  return integerValue(BigInt(Math.trunc(value)), type);
}

function toFloating(value: Exclude<Value, UnknownValue>, type: FloatingType): Value {
  switch (value.kind) {
    case "integer":
      return { kind: "floating", value: roundTo(Number(value.value), type), type };
    case "floating":
      return { kind: "floating", value: roundTo(value.value, type), type };
    case "address":
      return unknown("an address is no floating value");
  }
}

function toPointer(value: Exclude<Value, UnknownValue>, type: Type): Value {
  switch (value.kind) {
    case "integer":
      return { kind: "address", base: absolute, offset: value.value, type };
    case "address":
      return { ...value, type };
    case "floating":
      return unknown("a floating value is no address");
  }
}
