import type { BasicTypes } from "../types/basic-types.ts";
import { fits } from "../types/conversions.ts";
import type { FloatingType, IntegerType } from "../types/types.ts";

export type NumberLiteral =
  | { readonly kind: "integer"; readonly value: bigint; readonly type: IntegerType }
  | { readonly kind: "floating"; readonly value: number; readonly type: FloatingType }
  | { readonly kind: "malformed"; readonly what: string };

const integerPattern = /^(0[xX][0-9a-fA-F]+|0[bB][01]+|[0-9]+)([uUlLzZ]*)$/;
const floatingPattern = /^((?:[0-9]+\.[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?|[0-9]+[eE][+-]?[0-9]+)([fFlL]?)$/;
const hexadecimalFloatingPattern = /^0[xX]([0-9a-fA-F]*)\.?([0-9a-fA-F]*)[pP]([+-]?[0-9]+)([fFlL]?)$/;

/** Reads an integer or floating constant with base, suffix and digit separators (C11 6.4.4.1, 6.4.4.2). */
export function readNumber(text: string, types: BasicTypes): NumberLiteral {
  const digits = text.includes("'") ? text.replaceAll("'", "") : text;
  const integer = integerPattern.exec(digits);
  if (integer !== null) return readInteger(integer[1] ?? "0", integer[2] ?? "", types);
  const floating = floatingPattern.exec(digits);
  if (floating !== null) {
    return floatingOf(Number(floating[1]), floating[2] ?? "", types);
  }
  const hexadecimal = hexadecimalFloatingPattern.exec(digits);
  if (hexadecimal !== null) {
    const [, whole = "", fraction = "", exponent = "0", suffix = ""] = hexadecimal;
    const mantissa = Number.parseInt(`${whole}${fraction}` || "0", 16);
    return floatingOf(mantissa * 2 ** (Number(exponent) - 4 * fraction.length), suffix, types);
  }
  return { kind: "malformed", what: `\`${text}\` is no number` };
}

/** Rounds to what the type can hold. */
export function roundTo(value: number, type: FloatingType): number {
  return type.bits === 32 ? Math.fround(value) : value;
}

function floatingOf(value: number, suffix: string, types: BasicTypes): NumberLiteral {
  const letter = suffix.toLowerCase();
  const type = letter === "f" ? types.float : letter === "l" ? types.longDouble : types.double;
  return { kind: "floating", value: roundTo(value, type), type };
}

function readInteger(digits: string, suffix: string, types: BasicTypes): NumberLiteral {
  const isDecimal = !/^0[0-9xXbB]/.test(digits);
  const isOctal = /^0[0-9]/.test(digits);
  if (isOctal && /[89]/.test(digits)) {
    return {
      kind: "malformed",
      what: `\`${digits}\` begins with 0, so it is octal, which has no digits 8 and 9`,
    };
  }
  const value = BigInt(isOctal ? `0o${digits.slice(1)}` : digits);
  const letters = suffix.toLowerCase();
  const unsigned = letters.includes("u");
  const rest = letters.replace("u", "");
  if (rest !== "" && rest !== "l" && rest !== "ll" && rest !== "z") {
    return { kind: "malformed", what: `\`${suffix}\` is no suffix of an integer` };
  }
  if (rest === "z") {
    return { kind: "integer", value, type: unsigned ? types.size : types.difference };
  }
  const type = typeByValue(value, rest.length, unsigned, isDecimal, types);
  if (type === undefined) return { kind: "malformed", what: `\`${digits}\` fits no integer type` };
  return { kind: "integer", value, type };
}

/** The first type of the table in C11 6.4.4.1p5 that can hold the value. */
function typeByValue(
  value: bigint,
  longs: number,
  unsigned: boolean,
  isDecimal: boolean,
  types: BasicTypes,
): IntegerType | undefined {
  const ladder: readonly (readonly [signed: IntegerType, unsigned: IntegerType])[] = [
    [types.int, types.unsignedInt],
    [types.long, types.unsignedLong],
    [types.longLong, types.unsignedLongLong],
  ];
  for (const [signedType, unsignedType] of ladder.slice(longs)) {
    if (!unsigned && fits(value, signedType)) return signedType;
    if ((unsigned || !isDecimal) && fits(value, unsignedType)) return unsignedType;
  }
  return fits(value, types.unsignedLongLong) ? types.unsignedLongLong : undefined;
}
