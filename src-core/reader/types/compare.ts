import type { FunctionType, Type } from "./types.ts";

/**
 * Whether two types are the same, qualifiers included. Names given by typedefs do not count; records and
 * enumerations are the same only if they are one declaration. Unknown types equal nothing but themselves.
 */
export function sameType(a: Type, b: Type): boolean {
  if (a === b) return true;
  return a.const === b.const && a.volatile === b.volatile && sameUnqualified(a, b);
}

/** `sameType` without looking at the outermost qualifiers. */
export function sameUnqualified(a: Type, b: Type): boolean {
  if (a === b) return true;
  switch (a.kind) {
    case "void":
      return b.kind === "void";
    case "integer":
      return (
        b.kind === "integer" &&
        a.rank === b.rank &&
        a.bits === b.bits &&
        a.signed === b.signed &&
        a.plainChar === b.plainChar
      );
    case "floating":
      return b.kind === "floating" && a.rank === b.rank;
    case "pointer":
      return b.kind === "pointer" && sameType(a.to, b.to);
    case "reference":
      return b.kind === "reference" && a.rvalue === b.rvalue && sameType(a.to, b.to);
    case "array":
      return b.kind === "array" && a.length === b.length && sameType(a.of, b.of);
    case "function":
      return b.kind === "function" && sameSignature(a, b) && sameType(a.returns, b.returns);
    case "record":
      return b.kind === "record" && a.record === b.record;
    case "enumeration":
      return b.kind === "enumeration" && a.enumeration === b.enumeration;
    case "unknown":
      return b.kind === "unknown" && a.name === b.name && a.name !== "";
  }
}

/**
 * Whether two functions take the same parameters, their outermost qualifiers aside (C++11 8.3.5p5), and the same
 * objects.
 */
export function sameSignature(a: FunctionType, b: FunctionType): boolean {
  if (a.const !== b.const) return false;
  if (a.variadic !== b.variadic || a.parameters.length !== b.parameters.length) return false;
  return a.parameters.every((type, index) => {
    const other = b.parameters[index];
    return other !== undefined && sameUnqualified(type, other);
  });
}
