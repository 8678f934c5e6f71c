import type { FunctionSymbol, TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import type { Field } from "../../reader/types/types.ts";
import type { Place } from "./places.ts";

/**
 * What the walk knows of a value. Integers are kept as numbers, already wrapped to the target's type; one
 * that does not fit 53 bits is unknown. `from` is the expression that gave the value: for an argument handed
 * down through parameters the one written in the outermost call, for an element of a table its initialiser.
 */
export type Value = IntegerValue | FloatingValue | AddressValue | FunctionValue | UnknownValue;

interface Given {
  readonly from: TypedExpression | undefined;
}

export interface IntegerValue extends Given {
  readonly kind: "integer";
  readonly value: number;
  /** It comes out of a table, and `from` is its entry, however it is handed on. */
  readonly entry: boolean;
}

interface FloatingValue extends Given {
  readonly kind: "floating";
  readonly value: number;
}

/** The address of an object of the firmware, or of a register. */
export interface AddressValue extends Given {
  readonly kind: "address";
  readonly place: Place;
}

interface FunctionValue extends Given {
  readonly kind: "function";
  readonly function: FunctionSymbol;
}

/** Not known as a whole, but perhaps in part, and perhaps where it comes from. */
export interface UnknownValue extends Given {
  readonly kind: "unknown";
  /** Which of the low 32 bits are known, and which of those are 1. */
  readonly known: number;
  readonly ones: number;
  /** Bits taken over from a register as it stood when it was read. */
  readonly copied: CopiedBits | undefined;
  /** What the value depends on. */
  readonly traces: readonly Trace[];
  /** The value is the outcome of comparing something unknown with this. */
  readonly compared: Comparison | undefined;
}

export interface CopiedBits {
  readonly register: Register;
  /** Bits that are as the register has them. */
  readonly same: number;
  /** Bits that are the register's turned over. */
  readonly flipped: number;
  /** How far they were shifted to the right since. */
  readonly shift: number;
}

/** `left operator right`; the traces of the outcome are those of both. */
export interface Comparison {
  readonly operator: "<" | ">" | "<=" | ">=" | "==" | "!=";
  readonly left: Value;
  readonly right: Value;
}

/** Where an unknown value comes from. */
export type Trace =
  /** Bits of a register that the hardware changes; after a mask, only those that are left. */
  | { readonly kind: "register"; readonly register: Register; readonly mask: number }
  /** `digitalRead` of this pin. */
  | { readonly kind: "pin"; readonly pin: Value }
  /** The interrupt number that the sketch core gives this pin, on a chip that is not known. */
  | { readonly kind: "interrupt-of"; readonly pin: Value }
  /** `millis()` or `micros()`, or a counter that an interrupt handler counts up (`tick`: unit not known). */
  | { readonly kind: "time"; readonly unit: "ms" | "us" | "tick"; readonly name: string }
  /** A variable, or a member of an object, that interrupt handlers write. */
  | { readonly kind: "shared"; readonly variable: Variable | undefined; readonly field: Field | undefined }
  /** What a function gave whose body is not in the project. */
  | { readonly kind: "outside-call"; readonly name: string }
  /** A parameter of a function that is walked on its own. */
  | { readonly kind: "parameter"; readonly variable: Variable };

/** A register of the chip. `address` is undefined where it is known by name alone (chip unknown). */
export interface Register {
  readonly name: string;
  readonly address: number | undefined;
  readonly bits: 8 | 16 | 32;
}

/** What is known of a register's bits: `ones` is a subset of `known`. */
export interface Bits {
  readonly known: number;
  readonly ones: number;
}

/** The value as an integer: undefined where it is not known, or no number. */
export function integerOf(value: Value | undefined): number | undefined {
  if (value === undefined) return undefined;
  if (value.kind === "integer") return value.value;
  return value.kind === "floating" && Number.isInteger(value.value) ? value.value : undefined;
}

/** The value as a number, integer or not. */
export function numberOf(value: Value | undefined): number | undefined {
  return value?.kind === "integer" || value?.kind === "floating" ? value.value : undefined;
}
