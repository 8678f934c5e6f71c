import type { OutsideBody, TargetMemory } from "../outcome.ts";
import { isSpace } from "./characters.ts";
import { textAt, writeUnsigned } from "./target-text.ts";
import { asDouble, numberAt, type Subject } from "./values.ts";

/** A number at the start of a text. */
export interface Parsed {
  readonly negative: boolean;
  /** The digits' value without the sign. */
  readonly magnitude: bigint;
  /** Characters read; 0 where there is no number. */
  readonly length: number;
}

function digitValue(byte: number): number {
  const digit = Number.parseInt(String.fromCharCode(byte), 36);
  return Number.isNaN(digit) ? 36 : digit;
}

function beginsHex(text: readonly number[], at: number): boolean {
  return text[at] === 0x30 && ((text[at + 1] ?? 0) | 0x20) === 0x78 && digitValue(text[at + 2] ?? 0) < 16;
}

/** Reads white space, a sign, `0x` or `0` as far as the base has them, and digits: C11 7.22.1.4. Base 0 finds out. */
export function parseInteger(text: readonly number[], base: number): Parsed {
  let at = 0;
  while (at < text.length && isSpace(text[at] ?? 0)) at += 1;
  const sign = text[at];
  if (sign === 0x2b || sign === 0x2d) at += 1;
  const isHex = (base === 0 || base === 16) && beginsHex(text, at);
  if (isHex) at += 2;
  const radix = isHex ? 16 : base !== 0 ? base : text[at] === 0x30 ? 8 : 10;
  const first = at;
  let magnitude = 0n;
  for (let digit = digitValue(text[at] ?? 0); digit < radix; digit = digitValue(text[at] ?? 0)) {
    magnitude = magnitude * BigInt(radix) + BigInt(digit);
    at += 1;
  }
  return { negative: sign === 0x2d, magnitude, length: at === first ? 0 : at };
}

/** Decimal digits alone, overflow left to the caller: avr-libc's atoi and atol wrap round. */
export function parseDecimal(text: readonly number[]): number {
  const { negative, magnitude } = parseInteger(text, 10);
  const value = Number(BigInt.asIntN(32, magnitude));
  return negative ? -value : value;
}

const FLOATING = /^[\s]*[+-]?(?:inf(?:inity)?|nan|(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)/i;

interface ParsedDouble {
  readonly value: number;
  readonly length: number;
}

/** Reads a decimal floating number, `inf` or `nan`; no hexadecimal ones, which avr-libc does not know. */
export function parseDouble(text: readonly number[]): ParsedDouble {
  const found = FLOATING.exec(String.fromCharCode(...text.slice(0, 200)))?.[0];
  if (found === undefined) return { value: 0, length: 0 };
  const word = found.trim().toLowerCase();
  const negative = word.startsWith("-");
  if (word.includes("nan")) return { value: Number.NaN, length: found.length };
  if (word.includes("inf")) {
    return { value: negative ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY, length: found.length };
  }
  return { value: Number.parseFloat(word), length: found.length };
}

function tellEnd(memory: TargetMemory, end: number, address: number, bytes: number): void {
  if (end !== 0) writeUnsigned(memory, end, address, bytes);
}

/** strtol and strtoul, which stop at the ends of their range. */
function stringToLong(clip: (value: bigint) => bigint): OutsideBody {
  return (parameters, memory, { model }) => {
    const from = numberAt(parameters, 0);
    const { negative, magnitude, length } = parseInteger(textAt(memory, from), numberAt(parameters, 2));
    tellEnd(memory, numberAt(parameters, 1), from + length, model.pointer / 8);
    return Number(clip(negative ? -magnitude : magnitude));
  };
}

const LONG_MAX = 0x7fffffffn;
const ULONG_MAX = 0xffffffffn;

/** Numbers out of texts: C11 7.22.1. `long` has 32 bits on all targets. */
export const numberParsing: Subject = {
  atoi: (parameters, memory) => parseDecimal(textAt(memory, numberAt(parameters, 0))),
  atol: (parameters, memory) => parseDecimal(textAt(memory, numberAt(parameters, 0))),
  strtol: stringToLong((value) =>
    value > LONG_MAX ? LONG_MAX : value < -LONG_MAX - 1n ? -LONG_MAX - 1n : value,
  ),
  strtoul: stringToLong((value) => (value > ULONG_MAX || value < -ULONG_MAX ? ULONG_MAX : value)),
  atof: (parameters, memory, { model }) =>
    asDouble(parseDouble(textAt(memory, numberAt(parameters, 0))).value, model),
  strtod(parameters, memory, { model }) {
    const from = numberAt(parameters, 0);
    const { value, length } = parseDouble(textAt(memory, from));
    tellEnd(memory, numberAt(parameters, 1), from + length, model.pointer / 8);
    return asDouble(value, model);
  },
};
