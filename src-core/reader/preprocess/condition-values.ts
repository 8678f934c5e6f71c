/** Integers as `#if` knows them: 64 bits, signed or unsigned (C11 6.10.1, 4: intmax_t and uintmax_t). */
export interface ConditionValue {
  readonly value: bigint;
  readonly unsigned: boolean;
}

/** What the value of a character constant depends on. */
export interface CharacterModel {
  readonly charSigned: boolean;
  readonly intBits: number;
  readonly wideBits: number;
}

export function conditionValue(value: bigint, unsigned: boolean): ConditionValue {
  return { value: unsigned ? BigInt.asUintN(64, value) : BigInt.asIntN(64, value), unsigned };
}

export function truth(isTrue: boolean): ConditionValue {
  return { value: isTrue ? 1n : 0n, unsigned: false };
}

const INTEGER =
  /^(0[xX][0-9a-fA-F]+|0[bB][01]+|0[0-7]*|[1-9][0-9]*)([uU]?(?:[lL]|ll|LL)?[uU]?|[uU]?[zZ][uU]?)$/;

/** The value of a pp-number, or what is wrong with it. */
export function readInteger(text: string): ConditionValue | string {
  const plain = text.replaceAll("'", "");
  const match = INTEGER.exec(plain);
  const [, digits = "", suffix = ""] = match ?? [];
  if (match === null || /[uU].*[uU]/.test(suffix)) {
    const isFloat =
      /^(?:0[xX][0-9a-fA-F.]*[pP.]|[0-9.]+(?:[eE][+-]?[0-9]|\.|$))/.test(plain) && /[.eEpP]/.test(plain);
    return isFloat
      ? `${text} is no integer; #if knows only integers.`
      : `${text} is not an integer constant.`;
  }
  const isOctal = /^0[0-7]+$/.test(digits);
  const value = BigInt(isOctal ? `0o${digits.slice(1)}` : digits);
  if (value >= 1n << 64n) return `${text} does not fit into 64 bits.`;
  return conditionValue(value, /[uU]/.test(suffix) || value >= 1n << 63n);
}

const SIMPLE_ESCAPES: Readonly<Record<string, number>> = {
  ...{ n: 10, t: 9, r: 13, a: 7, b: 8, f: 12, v: 11, e: 27, E: 27 },
  ...{ "\\": 92, "'": 39, '"': 34, "?": 63 },
};

/** The value of a character constant such as `'a'`, `'\x1B'` or `L'z'`, or what is wrong with it. */
export function readCharacter(text: string, model: CharacterModel): ConditionValue | string {
  const quote = text.indexOf("'");
  const prefix = text.slice(0, quote);
  const codes = characterCodes(
    text.slice(quote + 1, text.lastIndexOf("'")),
    prefix === "" || prefix === "u8",
  );
  if (codes === undefined) return `${text} is not a character constant.`;
  const last = codes.at(-1) ?? 0;
  if (prefix === "u" || prefix === "U") return conditionValue(BigInt(last), true);
  if (prefix === "u8") return conditionValue(BigInt(last & 0xff), true);
  if (prefix === "L") return conditionValue(BigInt.asIntN(model.wideBits, BigInt(last)), false);
  if (codes.length === 1) {
    const narrow = BigInt(last);
    return conditionValue(model.charSigned ? BigInt.asIntN(8, narrow) : BigInt.asUintN(8, narrow), false);
  }
  let value = 0n;
  for (const code of codes) value = (value << 8n) | BigInt(code & 0xff);
  return conditionValue(BigInt.asIntN(model.intBits, value), false);
}

/** Code units of a constant's inside: bytes of UTF-8 where `narrow`, else code points. */
function characterCodes(inside: string, narrow: boolean): readonly number[] | undefined {
  const codes: number[] = [];
  let index = 0;
  while (index < inside.length) {
    const found = /^\\(?:x([0-9a-fA-F]+)|([0-7]{1,3})|u([0-9a-fA-F]{4})|U([0-9a-fA-F]{8})|(.))/su.exec(
      inside.slice(index, index + 16),
    );
    if (found !== null) {
      const [all, hex, octal, short, long, simple] = found;
      index += all.length;
      if (hex !== undefined) codes.push(Number.parseInt(hex, 16) % 2 ** 32);
      else if (octal !== undefined) codes.push(Number.parseInt(octal, 8));
      else if (simple !== undefined) {
        const code = SIMPLE_ESCAPES[simple];
        if (code === undefined) return undefined;
        codes.push(code);
      } else codes.push(...encode(Number.parseInt(short ?? long ?? "0", 16), narrow));
      continue;
    }
    const code = inside.codePointAt(index) ?? 0;
    if (code === 92) return undefined;
    index += code > 0xffff ? 2 : 1;
    codes.push(...encode(code, narrow));
  }
  return codes.length === 0 ? undefined : codes;
}

function encode(code: number, narrow: boolean): readonly number[] {
  if (!narrow || code < 0x80) return [code];
  if (code < 0x800) return [0xc0 | (code >> 6), 0x80 | (code & 0x3f)];
  if (code < 0x10000) return [0xe0 | (code >> 12), 0x80 | ((code >> 6) & 0x3f), 0x80 | (code & 0x3f)];
  return [
    0xf0 | ((code >> 18) & 7),
    0x80 | ((code >> 12) & 0x3f),
    0x80 | ((code >> 6) & 0x3f),
    0x80 | (code & 0x3f),
  ];
}
