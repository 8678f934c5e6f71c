import type { BasicTypes } from "../types/basic-types.ts";
import type { IntegerType } from "../types/types.ts";

/** Escapes of one letter (C11 6.4.4.4p3) and GNU `\e`. */
const simpleEscapes: Readonly<Record<string, number>> = {
  a: 7,
  b: 8,
  e: 27,
  f: 12,
  n: 10,
  r: 13,
  t: 9,
  v: 11,
};

interface Unit {
  readonly value: number;
  /** Given by number (`\xF4`, `\364`), so a byte of its own and no character to encode. */
  readonly numeric: boolean;
}

function readEscape(body: string, from: number): { readonly unit: Unit; readonly end: number } {
  const rest = body.slice(from, from + 12);
  const octal = /^[0-7]{1,3}/.exec(rest);
  if (octal !== null) {
    return { unit: { value: Number.parseInt(octal[0], 8), numeric: true }, end: from + octal[0].length };
  }
  const hexadecimal = /^x([0-9a-fA-F]+)/.exec(rest);
  if (hexadecimal !== null) {
    const value = Number.parseInt(hexadecimal[1]?.slice(-8) ?? "0", 16);
    return { unit: { value, numeric: true }, end: from + hexadecimal[0].length };
  }
  const universal = /^(?:u([0-9a-fA-F]{4})|U([0-9a-fA-F]{8}))/.exec(rest);
  if (universal !== null) {
    const value = Number.parseInt(universal[1] ?? universal[2] ?? "0", 16);
    return { unit: { value, numeric: false }, end: from + universal[0].length };
  }
  const letter = rest.charAt(0);
  return {
    unit: { value: simpleEscapes[letter] ?? letter.charCodeAt(0), numeric: false },
    end: from + Math.max(1, letter.length),
  };
}

function readUnits(body: string): Unit[] {
  const units: Unit[] = [];
  for (let index = 0; index < body.length; ) {
    if (body[index] === "\\" && index + 1 < body.length) {
      const { unit, end } = readEscape(body, index + 1);
      units.push(unit);
      index = end;
      continue;
    }
    const value = body.codePointAt(index) ?? 0;
    units.push({ value, numeric: false });
    index += value > 0xffff ? 2 : 1;
  }
  return units;
}

function utf8(value: number): readonly number[] {
  if (value < 0x80) return [value];
  if (value < 0x800) return [0xc0 | (value >> 6), 0x80 | (value & 0x3f)];
  if (value < 0x10000) return [0xe0 | (value >> 12), 0x80 | ((value >> 6) & 0x3f), 0x80 | (value & 0x3f)];
  return [
    0xf0 | ((value >> 18) & 7),
    0x80 | ((value >> 12) & 0x3f),
    0x80 | ((value >> 6) & 0x3f),
    0x80 | (value & 0x3f),
  ];
}

interface Written {
  readonly prefix: string;
  readonly units: readonly Unit[];
}

function takeApart(text: string): Written {
  const raw = /^(u8|[uUL]?)R"([^ ()\\\t\v\f\n]{0,16})\(([\s\S]*)\)\2"/.exec(text);
  if (raw !== null) {
    const units = [...(raw[3] ?? "")].map((letter) => ({
      value: letter.codePointAt(0) ?? 0,
      numeric: false,
    }));
    return { prefix: raw[1] ?? "", units };
  }
  const prefix = /^(?:u8|[uUL])?/.exec(text)?.[0] ?? "";
  const quote = text.charAt(prefix.length);
  const body = text.slice(prefix.length + 1, text.endsWith(quote) ? -1 : undefined);
  return { prefix, units: readUnits(body) };
}

function elementType(prefix: string, types: BasicTypes): IntegerType {
  switch (prefix) {
    case "L":
      return types.int;
    case "u":
      return types.int.bits === 16 ? types.unsignedInt : types.unsignedShort;
    case "U":
      return types.unsignedLong;
    default:
      return types.char;
  }
}

/** In C++ the types of wide characters have names of their own (C++11 2.14.3p2). */
function wideType(prefix: string, language: "c" | "c++", types: BasicTypes): IntegerType {
  const type = elementType(prefix, types);
  if (language === "c") return type;
  return { ...type, name: prefix === "L" ? "wchar_t" : prefix === "u" ? "char16_t" : "char32_t" };
}

export interface CharacterLiteral {
  readonly value: bigint;
  readonly type: IntegerType;
}

/**
 * A character constant (C11 6.4.4.4): `int` in C, `char` in C++, its value that of a `char` sign included.
 * Several characters give an `int` with the last in the low byte, as GCC has it.
 */
export function readCharacter(text: string, language: "c" | "c++", types: BasicTypes): CharacterLiteral {
  const { prefix, units } = takeApart(text);
  const bytes = units.flatMap((unit) => (unit.numeric ? [unit.value & 0xff] : utf8(unit.value)));
  if (prefix !== "" && prefix !== "u8") {
    const type = wideType(prefix, language, types);
    const wide = BigInt(units[units.length - 1]?.value ?? 0);
    return { value: type.signed ? BigInt.asIntN(type.bits, wide) : BigInt.asUintN(type.bits, wide), type };
  }
  if (bytes.length > 1) {
    const joined = bytes.reduce((sum, byte) => (sum << 8n) | BigInt(byte), 0n);
    return { value: BigInt.asIntN(types.int.bits, joined), type: types.int };
  }
  const byte = BigInt(bytes[0] ?? 0);
  const value = types.char.signed ? BigInt.asIntN(8, byte) : byte;
  return { value, type: language === "c" ? types.int : types.char };
}

export interface StringLiteral {
  /** With the terminating zero; elements wider than a byte in the target's (little-endian) order. */
  readonly bytes: readonly number[];
  readonly element: IntegerType;
  /** Elements, terminating zero included. */
  readonly length: number;
}

/** Adjacent string literals as one array (C11 6.4.5p5). */
export function readString(parts: readonly string[], types: BasicTypes): StringLiteral {
  const written = parts.map(takeApart);
  const prefix = written.find((part) => part.prefix !== "" && part.prefix !== "u8")?.prefix ?? "";
  const element = elementType(prefix, types);
  const size = element.bits / 8;
  const bytes: number[] = [];
  for (const { units } of written) {
    for (const unit of units) {
      if (size > 1) pushWide(bytes, unit.value, size);
      else if (unit.numeric) bytes.push(unit.value & 0xff);
      else bytes.push(...utf8(unit.value));
    }
  }
  pushWide(bytes, 0, size);
  return { bytes, element, length: bytes.length / size };
}

function pushWide(bytes: number[], value: number, size: number): void {
  for (let index = 0; index < size; index += 1) bytes.push((value >>> (8 * index)) & 0xff);
}
