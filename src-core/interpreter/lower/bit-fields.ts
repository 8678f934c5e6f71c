import type { Shape } from "./shape.ts";

/** Where a bit-field is: `bit` counts from the least significant bit of the byte at `address`, 0 to 7. */
export interface BitPlace {
  readonly address: string;
  readonly bit: number;
  readonly width: number;
}

/** JavaScript that reads a bit-field whose type has this shape. */
export function loadedBits({ address, bit, width }: BitPlace, shape: Shape, place: number): string {
  const isWide = needsBigint(bit, width);
  const code = `${isWide ? "lw" : "lb"}(${address},${bit},${width},${isSigned(shape)},${place})`;
  return asHeld(code, isWide, shape);
}

/** JavaScript that writes one; its value is what the bit-field then holds. `held` is a name for that. */
export function storedBits(
  { address, bit, width }: BitPlace,
  shape: Shape,
  value: string,
  held: string,
  place: number,
): string {
  const isWide = needsBigint(bit, width);
  const cut = isWide ? cutBigint(value, width, shape) : cutNumber(value, width, shape);
  const code = `${isWide ? "sw" : "sb"}(${address},${bit},${width},${held}=${cut},${place})`;
  return `(${code},${asHeld(held, isWide, shape)})`;
}

/** JavaScript that copies one, of whatever type, from the byte at one address to the byte at another. */
export function copiedBits(to: string, from: string, bit: number, width: number, place: number): string {
  const letter = needsBigint(bit, width) ? "w" : "b";
  return `s${letter}(${to},${bit},${width},l${letter}(${from},${bit},${width},false,${place}),${place})`;
}

/** Bits that do not fit the numbers of 32 bits that JavaScript's operators work on. */
function needsBigint(bit: number, width: number): boolean {
  return bit + width > 32;
}

function isSigned(shape: Shape): boolean {
  return (shape.kind === "integer" || shape.kind === "wide") && shape.signed;
}

function asHeld(code: string, isBigint: boolean, shape: Shape): string {
  if (shape.kind === "wide") return isBigint ? code : `BigInt(${code})`;
  return isBigint ? `Number(${code})` : code;
}

function cutBigint(value: string, width: number, shape: Shape): string {
  const whole = shape.kind === "wide" ? value : `BigInt(${value})`;
  return `BigInt.as${isSigned(shape) ? "Int" : "Uint"}N(${width},${whole})`;
}

function cutNumber(value: string, width: number, shape: Shape): string {
  const whole = shape.kind === "wide" ? `Number(BigInt.asUintN(32,${value}))` : `(${value})`;
  const above = 32 - width;
  return `${whole}<<${above}${isSigned(shape) ? ">>" : ">>>"}${above}`;
}
