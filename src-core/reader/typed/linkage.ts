import type { Attribute, Specifiers, StorageWord } from "../syntax/nodes.ts";
import type { Token } from "../tokens.ts";
import { typeText } from "../types/text.ts";
import type { FunctionType, Type } from "../types/types.ts";
import type { Context } from "./context.ts";
import type { Storage } from "./nodes.ts";
import { enclosingRegion, type Scope } from "./scope.ts";

/** An attribute's name without the underscores that headers put around it. */
function attributeName(attribute: Attribute): string {
  return attribute.name.replace(/^__(.*)__$/, "$1");
}

export function hasAttribute(attributes: readonly Attribute[], ...names: readonly string[]): boolean {
  return attributes.some((attribute) => names.includes(attributeName(attribute)));
}

/** Names of unnamed namespaces hold a character no identifier has; what is in them links with nothing. */
export const unnamedNamespace = "(unnamed)";

/**
 * The name by which declarations of a function in several units are one (C11 6.2.2, C++11 3.5): its own in C,
 * with its parameters in C++; undefined for internal linkage.
 */
export function functionLinkage(
  context: Context,
  qualifiedName: string,
  type: FunctionType,
  storage: readonly StorageWord[],
  region: Scope,
): string | undefined {
  if (region.prefix.includes(unnamedNamespace)) return undefined;
  if (storage.includes("static") && region.kind !== "record") return undefined;
  if (context.unit.linkage === "c") return qualifiedName;
  const parameters = type.parameters.map(typeText).join(",");
  return `${qualifiedName}(${parameters})${type.const === true ? " const" : ""}`;
}

/** The same for a variable. A `const` without `extern` is the unit's own in C++ (C++11 3.5p3). */
export function variableLinkage(
  context: Context,
  qualifiedName: string,
  type: Type,
  storage: readonly StorageWord[],
  region: Scope,
): string | undefined {
  if (region.prefix.includes(unnamedNamespace)) return undefined;
  if (region.kind === "record") return qualifiedName;
  if (storage.includes("static")) return undefined;
  const isConstant = storage.includes("constexpr") || (type.const === true && type.volatile !== true);
  if (context.unit.language === "c++" && isConstant && !storage.includes("extern")) return undefined;
  return qualifiedName;
}

/** Where an object declared in this scope with these words is kept. */
export function storageOf(
  context: Context,
  specifiers: Specifiers,
  linkageName: string | undefined,
): Storage {
  const { storage } = specifiers;
  if (context.scope.kind === "block" && context.body !== undefined) {
    if (storage.includes("extern")) return "global";
    return storage.includes("static") ? "static-local" : "local";
  }
  const region = enclosingRegion(context.scope);
  return region.kind === "record" || linkageName !== undefined ? "global" : "file";
}

const vectorPattern = /^\w+_vect$/;

/**
 * The interrupt vector that a function serves: the name as the header spells it (`INT0_vect`), found in the
 * macros the function's name came out of, or the name itself where it is a vector's or is marked as one.
 */
export function vectorOf(name: Token, attributes: readonly Attribute[]): string | undefined {
  for (let use = name.macro; use !== undefined; use = use.within) {
    if (vectorPattern.test(use.name)) return use.name;
  }
  if (vectorPattern.test(name.text) || /^__vector_\d+$/.test(name.text)) return name.text;
  return hasAttribute(attributes, "signal", "interrupt") ? name.text : undefined;
}
