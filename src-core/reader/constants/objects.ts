import type { AggregateEntry, TypedInitializer } from "../typed/nodes.ts";
import { integerTypeOf } from "../types/conversions.ts";
import { sizeOf } from "../types/layout.ts";
import type { Field, Type } from "../types/types.ts";
import { initialValue, type Run } from "./evaluate.ts";
import { isConstant, type Location } from "./locate.ts";
import { convertValue, integerValue, type UnknownValue, unknown, type Value } from "./value.ts";

/** Which bits of the bytes at a place belong to a bit-field. */
export interface BitField {
  /** From the least significant bit of the first byte. */
  readonly bit: number;
  readonly width: number;
}

/** Reads a scalar out of a constant object: an element of a table, a field, a character of a string. */
export function readAt(run: Run, place: Location, type: Type, bitField: BitField | undefined): Value {
  const { base } = place;
  const offset = Number(place.offset);
  switch (base.kind) {
    case "string":
      return readBytes(run, base.literal.bytes, offset, type);
    case "variable": {
      const { variable } = base;
      const held = run.environment?.get(variable);
      if (held !== undefined && offset === 0 && bitField === undefined) return convertValue(held, type);
      if (!isConstant(variable)) return unknown(`\`${variable.name}\` is not constant`);
      if (variable.initializer === undefined)
        return unknown(`the value of \`${variable.name}\` stands elsewhere`);
      return readFrom(run, variable.type, variable.initializer, offset, type, bitField);
    }
    case "function":
    case "absolute":
      return unknown("not an object with a known value");
  }
}

function readBytes(run: Run, bytes: readonly number[], offset: number, type: Type): Value {
  const integer = integerTypeOf(type);
  const size = sizeOf(type, run.model);
  if (integer === undefined || size === undefined) return unknown("not a number");
  if (offset < 0 || offset + size > bytes.length) return unknown("beyond the end of the string");
  let value = 0n;
  for (let index = size - 1; index >= 0; index -= 1)
    value = (value << 8n) | BigInt(bytes[offset + index] ?? 0);
  return integerValue(value, integer);
}

const zero = (type: Type): Value => {
  const integer = integerTypeOf(type);
  if (integer !== undefined) return integerValue(0n, integer);
  if (type.kind === "floating") return { kind: "floating", value: 0, type };
  if (type.kind === "pointer") return { kind: "address", base: { kind: "absolute" }, offset: 0n, type };
  return unknown("no value of a scalar type");
};

/** Reads at an offset into an object of type `whole` with this initialiser; missing parts are zero. */
function readFrom(
  run: Run,
  whole: Type,
  initializer: TypedInitializer,
  offset: number,
  wanted: Type,
  bitField: BitField | undefined,
): Value {
  const size = sizeOf(whole, run.model);
  if (size === undefined || offset < 0 || offset >= size) return unknown("beyond the end of the object");
  if (initializer.kind === "constructor") return unknown("made by a constructor");
  if (initializer.kind === "value") {
    const { value } = initializer;
    if (value.kind === "string") return readString(run, value.bytes, offset, wanted);
    if (value.kind === "construct") return readFrom(run, whole, value.initializer, offset, wanted, bitField);
    if (offset !== 0 || sizeOf(wanted, run.model) !== size) return unknown("a part of a value");
    return convertValue(initialValue(run, value), wanted);
  }
  const step = inner(run, whole, offset, bitField);
  if (step.kind === "unknown") return step;
  const entry = lastMatch(initializer.entries, step);
  if (entry === undefined) return zero(wanted);
  if (step.kind === "field" && step.field.bitWidth !== undefined) {
    return readBitField(run, entry, step.field, wanted);
  }
  return readFrom(run, step.type, entry.initializer, step.offset, wanted, bitField);
}

/** Bytes after the text of a string are zero. */
function readString(run: Run, bytes: readonly number[], offset: number, type: Type): Value {
  return offset < bytes.length ? readBytes(run, bytes, offset, type) : zero(type);
}

function readBitField(run: Run, entry: AggregateEntry, field: Field, wanted: Type): Value {
  const { initializer } = entry;
  const integer = integerTypeOf(wanted);
  if (initializer.kind !== "value" || integer === undefined) return unknown("not a number");
  const value = initialValue(run, initializer.value);
  if (value.kind !== "integer") return value;
  return integerValue(value.value, { ...integer, bits: field.bitWidth ?? integer.bits });
}

type Step =
  | { readonly kind: "element"; readonly index: number; readonly type: Type; readonly offset: number }
  | { readonly kind: "field"; readonly field: Field; readonly type: Type; readonly offset: number };

/** Which member of an aggregate holds the byte at an offset (the bit, for bit-fields). */
function inner(run: Run, whole: Type, offset: number, bitField: BitField | undefined): Step | UnknownValue {
  if (whole.kind === "array") {
    const size = sizeOf(whole.of, run.model);
    if (size === undefined || size === 0) return unknown("the size of the elements is not known");
    const index = Math.floor(offset / size);
    return { kind: "element", index, type: whole.of, offset: offset - index * size };
  }
  if (whole.kind !== "record") return unknown("not an array or a record");
  if (whole.record.keyword === "union") return unknown("a member of a union");
  for (const field of whole.record.fields) {
    const first = Math.floor(field.bitOffset / 8);
    if (field.bitWidth !== undefined) {
      const isMeant = bitField !== undefined && field.bitOffset === offset * 8 + bitField.bit;
      if (isMeant) return { kind: "field", field, type: field.type, offset: 0 };
      continue;
    }
    const size = sizeOf(field.type, run.model) ?? 0;
    if (offset >= first && offset < first + size) {
      return { kind: "field", field, type: field.type, offset: offset - first };
    }
  }
  return unknown("no member stands there");
}

/** The entry for a member; of several the last counts (C11 6.7.9p19). */
function lastMatch(entries: readonly AggregateEntry[], step: Step): AggregateEntry | undefined {
  for (let at = entries.length - 1; at >= 0; at -= 1) {
    const entry = entries[at];
    if (entry === undefined) continue;
    const { target } = entry;
    if ("bitOffset" in target) {
      if (step.kind === "field" && target === step.field) return entry;
    } else if (step.kind === "element" && step.index >= target.index && step.index <= target.upTo) {
      return entry;
    }
  }
  return undefined;
}
