import { basicTypes } from "./basic-types.ts";
import type { DataModel, IntegerType, Type } from "./types.ts";

function exact(bits: number, signed: boolean, model: DataModel): IntegerType | undefined {
  const types = basicTypes(model);
  if (bits === 8) return signed ? types.signedChar : types.unsignedChar;
  if (bits === 16) {
    if (model.int === 16) return signed ? types.int : types.unsignedInt;
    return signed ? types.short : types.unsignedShort;
  }
  if (bits === 32) return signed ? types.long : types.unsignedLong;
  return bits === 64 ? (signed ? types.longLong : types.unsignedLongLong) : undefined;
}

function named(name: string, model: DataModel): IntegerType | undefined {
  const types = basicTypes(model);
  const width = /^(u?)int(?:_least)?(8|16|32|64)_t$/.exec(name);
  if (width !== null) return exact(Number(width[2]), width[1] === "", model);
  const fast = /^(u?)int_fast(8|16|32|64)_t$/.exec(name);
  if (fast !== null) {
    const bits = Number(fast[2]);
    return exact(model.int === 32 && bits === 16 ? 32 : bits, fast[1] === "", model);
  }
  switch (name) {
    case "size_t":
      return types.size;
    case "ssize_t":
    case "ptrdiff_t":
    case "intptr_t":
      return types.difference;
    case "uintptr_t":
      return types.unsignedInt;
    case "intmax_t":
      return types.longLong;
    case "uintmax_t":
      return types.unsignedLongLong;
    case "bool":
      return types.bool;
    default:
      return undefined;
  }
}

/**
 * What C11 7.19 and 7.20 say of names such as `uint8_t` and `size_t`, for units in which no header declared
 * them: their meaning is fixed, so a missing header takes nothing away.
 */
export function standardType(name: string, model: DataModel): Type | undefined {
  // Where the next of the arguments behind `...` lies (avr-gcc: `void *`).
  if (name === "__builtin_va_list") return { kind: "pointer", to: { kind: "void" } };
  const type = named(name, model);
  return type === undefined ? undefined : { ...type, name };
}
