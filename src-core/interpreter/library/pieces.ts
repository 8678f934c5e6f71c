import type { Type } from "../../reader/types/types.ts";

/** What the overloads of the sketch core's text classes take. */
export type Piece =
  | { readonly kind: "character" }
  | { readonly kind: "integer"; readonly signed: boolean; readonly bits: number }
  | { readonly kind: "floating" }
  /** Where a text with a terminating zero lies. */
  | { readonly kind: "text" }
  /** The same out of program memory, as `F()` gives it. */
  | { readonly kind: "flash-text" }
  /** Where an object of class String lies. */
  | { readonly kind: "string" }
  | { readonly kind: "printable" };

/** Undefined for types that no overload takes. */
export function pieceOf(type: Type | undefined): Piece | undefined {
  switch (type?.kind) {
    case "integer":
      if (type.plainChar) return { kind: "character" };
      return type.bits > 32 ? undefined : { kind: "integer", signed: type.signed, bits: type.bits };
    case "floating":
      return { kind: "floating" };
    case "pointer":
      if (type.to.kind === "record" && type.to.record.name === "__FlashStringHelper")
        return { kind: "flash-text" };
      return type.to.kind === "integer" && type.to.plainChar ? { kind: "text" } : undefined;
    case "reference":
      if (type.to.kind !== "record") return undefined;
      if (type.to.record.name === "String") return { kind: "string" };
      return type.to.record.name === "Printable" ? { kind: "printable" } : undefined;
    default:
      return undefined;
  }
}
