import type { DataModel, Type } from "../../reader/types/types.ts";
import type { OutsideBody } from "../outcome.ts";

/** What a function is called with: numbers, bigint for 64 bits. */
export type Passed = readonly (number | bigint)[];

/** Library functions of one subject by their names. */
export type Subject = Readonly<Record<string, OutsideBody>>;

/** A parameter that is no 64-bit integer. */
export function numberAt(parameters: Passed, index: number): number {
  return Number(parameters[index] ?? 0);
}

/** Keeps the lowest `bits` (at most 32), as an unsigned number. */
export function unsigned(value: number, bits: number): number {
  return bits >= 32 ? value >>> 0 : value & (2 ** bits - 1);
}

/** Keeps the lowest `bits` (at most 32), as a two's complement number. */
export function signed(value: number, bits: number): number {
  const spare = 32 - bits;
  return (value << spare) >> spare;
}

/** Rounds to what a `double` holds on the target. */
export function asDouble(value: number, model: DataModel): number {
  return model.double === 32 ? Math.fround(value) : value;
}

/** What a caller gets of a result: brought into the range of the function's type; C11 6.3.1. */
export function asType(value: number | bigint | undefined, type: Type): number | bigint | undefined {
  if (value === undefined || type.kind === "void") return undefined;
  if (type.kind === "floating") return type.bits === 32 ? Math.fround(Number(value)) : Number(value);
  if (type.kind !== "integer") return value;
  if (type.rank === "bool") return value ? 1 : 0;
  if (type.bits === 64)
    return type.signed ? BigInt.asIntN(64, BigInt(value)) : BigInt.asUintN(64, BigInt(value));
  const number = Number(value);
  return type.signed ? signed(number, type.bits) : unsigned(number, type.bits);
}
