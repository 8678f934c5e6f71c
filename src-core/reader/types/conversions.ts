import { basicTypes, unsignedOf } from "./basic-types.ts";
import type { ArithmeticType } from "./derive.ts";
import type { DataModel, FloatingRank, IntegerRank, IntegerType, Type } from "./types.ts";

const integerRanks: readonly IntegerRank[] = ["bool", "char", "short", "int", "long", "long long"];
const floatingRanks: readonly FloatingRank[] = ["float", "double", "long double"];

/** The integer type in which a value of this type is kept; undefined where it is neither integer nor enum. */
export function integerTypeOf(type: Type): IntegerType | undefined {
  if (type.kind === "integer") return type;
  return type.kind === "enumeration" ? type.enumeration.underlying : undefined;
}

/** The type an operand counts as: its own, for enumerations without `class` what their values become. */
export function arithmeticTypeOf(type: Type): ArithmeticType | undefined {
  if (type.kind === "floating") return type;
  if (type.kind !== "enumeration") return integerTypeOf(type);
  return type.enumeration.scoped ? undefined : type.enumeration.promotesTo;
}

/** The smallest value of an integer type. */
function minimumOf(type: IntegerType): bigint {
  return type.signed ? -(1n << BigInt(type.bits - 1)) : 0n;
}

/** The largest value of an integer type. */
function maximumOf(type: IntegerType): bigint {
  if (type.rank === "bool") return 1n;
  return (1n << BigInt(type.signed ? type.bits - 1 : type.bits)) - 1n;
}

export function fits(value: bigint, type: IntegerType): boolean {
  return value >= minimumOf(type) && value <= maximumOf(type);
}

/** Integer promotion (C11 6.3.1.1p2): what is narrower than `int` becomes `int`, or `unsigned` if it must. */
export function promote(type: IntegerType, model: DataModel): IntegerType {
  if (hasOwnWidth(type)) return type;
  const types = basicTypes(model);
  switch (type.rank) {
    case "bool":
    case "char":
    case "short":
      return type.signed || type.bits < model.int ? types.int : types.unsignedInt;
    case "int":
      return type.signed ? types.int : types.unsignedInt;
    case "long":
      return type.signed ? types.long : types.unsignedLong;
    case "long long":
      return type.signed ? types.longLong : types.unsignedLongLong;
  }
}

/**
 * Promotion of a bit-field, which goes by its width instead of its type's (C11 6.3.1.1p2). One that is wider than
 * `int` keeps just its own width in C, which C11 6.7.2.1p10 leaves to the compiler and gcc's C does ("C
 * Implementation-Defined Behavior", "Structures, unions, enumerations, and bit-fields"; seen in what it makes).
 */
export function promoteBitField(
  type: IntegerType,
  width: number,
  model: DataModel,
  language: "c" | "c++",
): IntegerType {
  const types = basicTypes(model);
  if (width < model.int || (width === model.int && type.signed)) return types.int;
  if (width === model.int) return types.unsignedInt;
  if (language === "c++") return promote(type, model);
  if (width === model.long) return type.signed ? types.long : types.unsignedLong;
  if (width === model.longLong) return type.signed ? types.longLong : types.unsignedLongLong;
  return { ...type, bits: width, name: `${type.name} : ${width}` };
}

/** Whether a type is that of a bit-field, of a width that no declared object has. */
export function hasOwnWidth(type: IntegerType): boolean {
  return type.bits !== 8 && type.bits !== 16 && type.bits !== 32 && type.bits !== 64;
}

/** The common type of two arithmetic operands (C11 6.3.1.8). Floating results carry no typedef name. */
export function usualArithmetic(a: ArithmeticType, b: ArithmeticType, model: DataModel): ArithmeticType {
  if (a.kind === "floating" || b.kind === "floating") return commonFloating(a, b, model);
  const left = promote(a, model);
  const right = promote(b, model);
  if (left === right) return left;
  // gcc goes by the width alone where a bit-field has its own.
  if (left.bits !== right.bits && (hasOwnWidth(left) || hasOwnWidth(right)))
    return left.bits > right.bits ? left : right;
  const leftRank = integerRanks.indexOf(left.rank);
  const rightRank = integerRanks.indexOf(right.rank);
  if (left.signed === right.signed) return leftRank >= rightRank ? left : right;
  const [unsigned, signed] = left.signed ? [right, left] : [left, right];
  const unsignedRank = left.signed ? rightRank : leftRank;
  const signedRank = left.signed ? leftRank : rightRank;
  if (unsignedRank >= signedRank) return unsigned;
  return signed.bits > unsigned.bits ? signed : unsignedOf(signed, model);
}

function commonFloating(a: ArithmeticType, b: ArithmeticType, model: DataModel): ArithmeticType {
  const types = basicTypes(model);
  const rankOf = (type: ArithmeticType) => (type.kind === "floating" ? floatingRanks.indexOf(type.rank) : 0);
  const rank = Math.max(rankOf(a), rankOf(b));
  return rank === 0 ? types.float : rank === 1 ? types.double : types.longDouble;
}
