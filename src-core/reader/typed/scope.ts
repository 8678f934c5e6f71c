import type {
  Declaration,
  Name,
  RecordSpecifier,
  TemplateArgument,
  TemplateParameter,
} from "../syntax/nodes.ts";
import type { RecordDeclaration, Type } from "../types/types.ts";
import type { Passage } from "./context.ts";
import type { Enumerator, FunctionSymbol, TypedExpression, TypeSymbol, Variable } from "./nodes.ts";

/** All functions of one name in one scope. */
export interface OverloadSet {
  readonly kind: "overloads";
  readonly name: string;
  readonly functions: FunctionSymbol[];
  readonly templates: TemplateEntry[];
}

export interface NamespaceEntry {
  readonly kind: "namespace";
  readonly scope: Scope;
}

/** A function or class template: what to read again once its parameters are known. */
export interface TemplateEntry {
  readonly kind: "template";
  readonly name: string;
  readonly parameters: readonly TemplateParameter[];
  readonly declaration: Declaration;
  /** The chunk it stands in. */
  readonly passage: Passage;
  readonly scope: Scope;
  /** Instances by the text of their arguments. */
  readonly instances: Map<string, TemplateInstance>;
  /** `template <class T> void C<T>::f() {...}`: members of a class template defined after it. */
  readonly memberDefinitions: TemplateEntry[];
  readonly partial: PartialSpecialisation[];
  /** It was given something that is not understood, which may hold for any arguments to come. */
  isUnclear: boolean;
}

/** `template <class T> class C<T *> {...}` */
export interface PartialSpecialisation {
  readonly entry: TemplateEntry;
  readonly pattern: readonly TemplateArgument[];
  readonly record: RecordSpecifier;
}

export interface TemplateInstance {
  readonly symbol: TypeSymbol | FunctionSymbol;
  readonly arguments: readonly TemplateArgumentValue[];
}

/** `Ts...` or `rest...` in one instance: what its elements are. */
export interface PackEntry {
  readonly kind: "pack";
  readonly elements: readonly Entry[];
}

/** What a template parameter stands for in one instance. */
export type TemplateArgumentValue =
  | { readonly kind: "pack"; readonly elements: readonly TemplateArgumentValue[] }
  | { readonly kind: "type"; readonly type: Type }
  | { readonly kind: "value"; readonly value: TypedExpression };

/** A non-static data member; which field it is, the record's layout says. */
export interface FieldEntry {
  readonly kind: "field";
  readonly name: string;
  readonly record: RecordDeclaration;
}

export type Entry =
  | Variable
  | Enumerator
  | TypeSymbol
  | OverloadSet
  | NamespaceEntry
  | TemplateEntry
  | FieldEntry
  | PackEntry;

export interface Scope {
  readonly kind: "global" | "namespace" | "record" | "enumeration" | "block" | "template";
  readonly parent: Scope | undefined;
  /** What goes before a name declared here to make it qualified: `N::C::`. */
  readonly prefix: string;
  readonly names: Map<string, Entry>;
  /** Names after `struct`, `union`, `class`, `enum`. */
  readonly tags: Map<string, TypeSymbol>;
  /** Namespaces opened with `using namespace`, and unnamed ones. */
  readonly opened: Scope[];
  /** Scopes of base classes. */
  readonly bases: Scope[];
  readonly record: RecordDeclaration | undefined;
}

export function makeScope(
  kind: Scope["kind"],
  parent: Scope | undefined,
  prefix: string,
  record?: RecordDeclaration,
): Scope {
  return {
    kind,
    parent,
    prefix,
    names: new Map(),
    tags: new Map(),
    opened: [],
    bases: [],
    record,
  };
}

/** A scope inside a function. */
export function blockScope(parent: Scope): Scope {
  return makeScope("block", parent, "");
}

/** Namespaces may open each other in a circle; no sensible chain is longer. */
const longestChain = 8;

/** What a name means in this very scope: declared in it, in a base class, or in a namespace it opens. */
export function lookupHere(scope: Scope, name: string, depth = 0): Entry | undefined {
  const own = scope.names.get(name);
  if (own !== undefined) return own;
  if (depth > longestChain) return undefined;
  for (const base of scope.bases) {
    const inherited = lookupHere(base, name, depth + 1);
    if (inherited !== undefined) return inherited;
  }
  for (const opened of scope.opened) {
    const entry = lookupHere(opened, name, depth + 1);
    if (entry !== undefined) return entry;
  }
  return undefined;
}

/** What a plain name means at this scope: the innermost declaration (C11 6.2.1p4). */
export function lookup(scope: Scope, name: string): Entry | undefined {
  for (let at: Scope | undefined = scope; at !== undefined; at = at.parent) {
    const entry = lookupHere(at, name);
    if (entry !== undefined) return entry;
  }
  return undefined;
}

export function lookupTag(scope: Scope, name: string): TypeSymbol | undefined {
  for (let at: Scope | undefined = scope; at !== undefined; at = at.parent) {
    const tag = at.tags.get(name) ?? at.opened.find((opened) => opened.tags.has(name))?.tags.get(name);
    if (tag !== undefined) return tag;
  }
  return undefined;
}

export function globalScope(scope: Scope): Scope {
  let at = scope;
  while (at.parent !== undefined) at = at.parent;
  return at;
}

/** The nearest scope that is not a block or a template's: where functions and linked names live. */
export function enclosingRegion(scope: Scope): Scope {
  let at = scope;
  while ((at.kind === "block" || at.kind === "template") && at.parent !== undefined) at = at.parent;
  return at;
}

/** The name as written, without template arguments: `A::b`. */
export function nameText(name: Name): string {
  const text = name.parts.map((part) => part.text).join("::");
  return name.global ? `::${text}` : text;
}
