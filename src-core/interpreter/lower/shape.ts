import { sizeOf } from "../../reader/types/layout.ts";
import type { DataModel, IntegerType, RecordDeclaration, Type } from "../../reader/types/types.ts";

/** How the generated code holds values of a type. Objects are held as their address. */
export type Shape =
  /** A number in the type's range. `width` is less than `bits` in arithmetic on bit-fields alone. */
  | {
      readonly kind: "integer";
      readonly bits: 8 | 16 | 32;
      readonly width: number;
      readonly signed: boolean;
      readonly truth: boolean;
    }
  /** A bigint in the type's range: 64 bits, or for bit-fields fewer. */
  | { readonly kind: "wide"; readonly width: number; readonly signed: boolean }
  | { readonly kind: "floating"; readonly bits: 32 | 64 }
  | { readonly kind: "pointer"; readonly bits: 16 | 32 }
  | { readonly kind: "object"; readonly size: number; readonly record: RecordDeclaration | undefined }
  | { readonly kind: "none" };

/** Undefined for types whose values cannot be held: unknown and incomplete ones. */
export function shapeOf(type: Type, model: DataModel): Shape | undefined {
  switch (type.kind) {
    case "void":
      return { kind: "none" };
    case "enumeration":
      return shapeOf(type.enumeration.underlying, model);
    case "integer":
      return integerShape(type);
    case "floating":
      return { kind: "floating", bits: type.bits };
    case "pointer":
    case "reference":
    case "function":
      return { kind: "pointer", bits: model.pointer };
    case "record":
    case "array": {
      const size = sizeOf(type, model);
      const record = type.kind === "record" ? type.record : undefined;
      return size === undefined ? undefined : { kind: "object", size, record };
    }
    case "unknown":
      return undefined;
  }
}

function integerShape({ bits: width, signed, rank }: IntegerType): Shape {
  if (width > 32) return { kind: "wide", width, signed };
  const bits = width > 16 ? 32 : width > 8 ? 16 : 8;
  return { kind: "integer", bits, width, signed, truth: rank === "bool" };
}

/** JavaScript that brings any bigint into the range of an integer type. */
export function wrappedWide(code: string, { signed, width }: Extract<Shape, { kind: "wide" }>): string {
  return `BigInt.as${signed ? "Int" : "Uint"}N(${width},${code})`;
}

/** JavaScript that brings any whole number into the range of an integer type. */
export function wrapped(code: string, shape: Extract<Shape, { kind: "integer" }>): string {
  if (shape.truth) return `(${code}?1:0)`;
  if (shape.width === 32) return shape.signed ? `(${code}|0)` : `(${code}>>>0)`;
  if (!shape.signed) return `(${code}&${2 ** shape.width - 1})`;
  const shift = 32 - shape.width;
  return `(${code}<<${shift}>>${shift})`;
}

/** JavaScript that reads a value of this shape at an address. */
export function loaded(shape: Shape, address: string, place: number): string {
  switch (shape.kind) {
    case "integer": {
      const raw = `l${shape.bits / 8}(${address},${place})`;
      return shape.signed ? wrapped(raw, shape) : raw;
    }
    case "wide":
      return shape.signed ? `BigInt.asIntN(64,l8(${address},${place}))` : `l8(${address},${place})`;
    case "floating":
      return `${shape.bits === 32 ? "lf" : "ld"}(${address},${place})`;
    case "pointer":
      return `l${shape.bits / 8}(${address},${place})`;
    case "object":
      return address;
    case "none":
      return "0";
  }
}

/** JavaScript that writes a value of this shape; its value is the one written, for objects their address. */
export function stored(shape: Shape, address: string, value: string, place: number): string {
  switch (shape.kind) {
    case "integer":
    case "pointer":
      return `s${shape.bits / 8}(${address},${value},${place})`;
    case "wide":
      return `s8(${address},${value},${place})`;
    case "floating":
      return `${shape.bits === 32 ? "sf" : "sd"}(${address},${value},${place})`;
    case "object":
      return `copy(${address},${value},${shape.size},${place})`;
    case "none":
      return `(${value},0)`;
  }
}

/** JavaScript that converts a value from one shape to another (C11 6.3). */
export function converted(code: string, from: Shape, to: Shape): string | undefined {
  if (to.kind === "none") return `(${code},0)`;
  if (to.kind === "integer" && to.truth) {
    return from.kind === "wide" ? `(${code}!==0n?1:0)` : `(${code}!==0?1:0)`;
  }
  switch (from.kind) {
    case "integer":
    case "pointer":
      return fromNumber(code, from, to);
    case "wide":
      return fromWide(code, to);
    case "floating":
      return fromFloating(code, to);
    case "object":
      return to.kind === "object" ? code : undefined;
    case "none":
      return undefined;
  }
}

function fromNumber(
  code: string,
  from: Extract<Shape, { kind: "integer" | "pointer" }>,
  to: Shape,
): string | undefined {
  switch (to.kind) {
    case "integer": {
      const isWider = from.kind === "integer" && (from.signed ? to.signed : true) && from.width <= to.width;
      const keeps = isWider && (from.width < to.width || from.signed === to.signed);
      return keeps ? code : wrapped(code, to);
    }
    case "pointer":
      return to.bits === 16 ? `(${code}&65535)` : `(${code}>>>0)`;
    case "wide":
      return to.signed ? `BigInt(${code})` : wrappedWide(`BigInt(${code})`, to);
    case "floating":
      return to.bits === 32 ? `fround(${code})` : code;
    case "object":
    case "none":
      return undefined;
  }
}

function fromWide(code: string, to: Shape): string | undefined {
  switch (to.kind) {
    case "integer":
      return `Number(BigInt.as${to.signed ? "Int" : "Uint"}N(${to.width},${code}))`;
    case "pointer":
      return `Number(BigInt.asUintN(${to.bits},${code}))`;
    case "wide":
      return wrappedWide(code, to);
    case "floating":
      return to.bits === 32 ? `fround(Number(${code}))` : `Number(${code})`;
    case "object":
    case "none":
      return undefined;
  }
}

function fromFloating(code: string, to: Shape): string | undefined {
  switch (to.kind) {
    case "integer":
      return wrapped(`whole(${code})`, to);
    case "wide":
      return wrappedWide(`BigInt(whole(${code}))`, to);
    case "floating":
      return to.bits === 32 ? `fround(${code})` : code;
    case "pointer":
    case "object":
    case "none":
      return undefined;
  }
}
