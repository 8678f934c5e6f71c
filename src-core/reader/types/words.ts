import { basicTypes } from "./basic-types.ts";
import type { DataModel, IntegerType, Type } from "./types.ts";

interface Counted {
  readonly base: string | undefined;
  readonly longs: number;
  readonly short: boolean;
  readonly sign: "signed" | "unsigned" | undefined;
}

/** Spellings that compilers accept for the standard words. */
const synonyms: Readonly<Record<string, string>> = {
  _Bool: "bool",
  __signed: "signed",
  __signed__: "signed",
  __int24: "int24",
  __uint24: "uint24",
};

function count(words: readonly string[]): Counted | undefined {
  let base: string | undefined;
  let longs = 0;
  let short = false;
  let sign: "signed" | "unsigned" | undefined;
  for (const written of words) {
    const word = synonyms[written] ?? written;
    if (word === "long") longs += 1;
    else if (word === "short") short = true;
    else if (word === "signed" || word === "unsigned") sign = word;
    else if (base === undefined) base = word;
    else return undefined;
  }
  return { base, longs, short, sign };
}

/** Types of the C++ keywords that C spells as typedefs (C++11 3.9.1p5; C11 7.19, 7.28). */
function characterType(word: string, model: DataModel): IntegerType | undefined {
  const types = basicTypes(model);
  switch (word) {
    case "wchar_t":
      return { ...types.int, name: "wchar_t" };
    case "char8_t":
      return { ...types.unsignedChar, name: "char8_t" };
    case "char16_t":
      return model.int === 16
        ? { ...types.unsignedInt, name: "char16_t" }
        : { ...types.unsignedShort, name: "char16_t" };
    case "char32_t":
      return { ...types.unsignedLong, name: "char32_t" };
    default:
      return undefined;
  }
}

/**
 * The type that specifier words name, in any order (C11 6.7.2p2): `long unsigned`, `signed char`, `double`.
 * Undefined where they name no type, as `short char` does.
 */
export function typeOfWords(words: readonly string[], model: DataModel): Type | undefined {
  const counted = count(words);
  if (counted === undefined) return undefined;
  const { base, longs, short, sign } = counted;
  const types = basicTypes(model);
  const unsigned = sign === "unsigned";
  switch (base) {
    case undefined:
    case "int":
      if (short) return longs > 0 ? undefined : unsigned ? types.unsignedShort : types.short;
      if (longs === 0)
        return base === undefined && sign === undefined
          ? undefined
          : unsigned
            ? types.unsignedInt
            : types.int;
      if (longs === 1) return unsigned ? types.unsignedLong : types.long;
      return longs === 2 ? (unsigned ? types.unsignedLongLong : types.longLong) : undefined;
    case "char":
      if (short || longs > 0) return undefined;
      return sign === undefined ? types.char : unsigned ? types.unsignedChar : types.signedChar;
    default:
      if (short || sign !== undefined) return undefined;
      if (base === "double") return longs === 0 ? types.double : longs === 1 ? types.longDouble : undefined;
      if (longs > 0) return undefined;
      if (base === "void") return types.void;
      if (base === "bool") return types.bool;
      if (base === "float") return types.float;
      return characterType(base, model) ?? unusual(base);
  }
}

/** Words that are types, but of no kind the reader computes with. */
function unusual(word: string): Type | undefined {
  const known = ["int24", "uint24", "_Complex", "__int128"];
  return known.includes(word) ? { kind: "unknown", name: word } : undefined;
}
