import type { FloatingType, FunctionType, IntegerType, Type } from "./types.ts";

/** Derived types are made once per type they derive from: most comparisons then end at identity. */
const pointers = new WeakMap<Type, Type>();
const arrays = new WeakMap<Type, Map<number | undefined, Type>>();
const qualifieds = new WeakMap<Type, Map<number, Type>>();

export function pointerTo(to: Type): Type {
  let pointer = pointers.get(to);
  if (pointer === undefined) {
    pointer = { kind: "pointer", to };
    pointers.set(to, pointer);
  }
  return pointer;
}

export function arrayOf(of: Type, length: number | undefined): Type {
  let lengths = arrays.get(of);
  if (lengths === undefined) {
    lengths = new Map();
    arrays.set(of, lengths);
  }
  let array = lengths.get(length);
  if (array === undefined) {
    array = { kind: "array", of, length };
    lengths.set(length, array);
  }
  return array;
}

/** A reference; references to references collapse (C++11 8.3.2p6). */
export function referenceTo(to: Type, form: "lvalue" | "rvalue"): Type {
  if (to.kind === "reference") return form === "lvalue" && to.rvalue ? { ...to, rvalue: false } : to;
  return { kind: "reference", to, rvalue: form === "rvalue" };
}

/** The function that a value of this type is or points to. */
export function calledType(type: Type): FunctionType | undefined {
  if (type.kind === "function") return type;
  return type.kind === "pointer" && type.to.kind === "function" ? type.to : undefined;
}

export interface Qualifiers {
  readonly const: boolean;
  readonly volatile: boolean;
}

export function qualifiersOf(type: Type): Qualifiers {
  if (type.kind === "array") return qualifiersOf(type.of);
  return { const: type.const === true, volatile: type.volatile === true };
}

/** The type with these qualifiers besides its own; on an array they go to its elements (C11 6.7.3p9). */
export function qualify(type: Type, added: Qualifiers): Type {
  if (!added.const && !added.volatile) return type;
  if (type.kind === "array") return arrayOf(qualify(type.of, added), type.length);
  if (type.kind === "reference" || type.kind === "function") return type;
  const isConst = added.const || type.const === true;
  const isVolatile = added.volatile || type.volatile === true;
  if (isConst === (type.const === true) && isVolatile === (type.volatile === true)) return type;
  const key = (isConst ? 1 : 0) + (isVolatile ? 2 : 0);
  let variants = qualifieds.get(type);
  if (variants === undefined) {
    variants = new Map();
    qualifieds.set(type, variants);
  }
  let variant = variants.get(key);
  if (variant === undefined) {
    variant = { ...type, ...(isConst ? { const: true } : {}), ...(isVolatile ? { volatile: true } : {}) };
    variants.set(key, variant);
  }
  return variant;
}

const unqualifieds = new WeakMap<Type, Type>();

/** The type of a value: without qualifiers of its own (C11 6.3.2.1p2). */
export function unqualified(type: Type): Type {
  if (type.const === undefined && type.volatile === undefined) return type;
  let plain = unqualifieds.get(type);
  if (plain === undefined) {
    const { const: _const, volatile: _volatile, ...rest } = type;
    plain = rest;
    unqualifieds.set(type, plain);
  }
  return plain;
}

/** What an expression of this declared type is: what a reference refers to, anything else itself. */
export function referred(type: Type): Type {
  return type.kind === "reference" ? type.to : type;
}

/** An arithmetic type under the name a typedef gave it; other types have no name of their own to change. */
export function renamed(type: Type, name: string): Type {
  if (type.kind !== "integer" && type.kind !== "floating") return type;
  if (type.name === name) return type;
  return { ...type, name };
}

export type ArithmeticType = IntegerType | FloatingType;
