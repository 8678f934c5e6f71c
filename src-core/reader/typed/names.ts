import type { Name, NamePart } from "../syntax/nodes.ts";
import { standardType } from "../types/standard-names.ts";
import type { Type } from "../types/types.ts";
import { type Context, refer } from "./context.ts";
import type { Enumerator, TypeSymbol } from "./nodes.ts";
import { type Entry, globalScope, lookup, lookupHere, lookupTag, nameText, type Scope } from "./scope.ts";
import { classInstance } from "./templates.ts";

/** What may stand before `::`. */
type Qualifier =
  | { readonly kind: "scope"; readonly scope: Scope }
  | { readonly kind: "enumeration"; readonly enumerators: ReadonlyMap<string, Enumerator> };

function typeOfPart(context: Context, part: NamePart, entry: Entry | undefined): TypeSymbol | undefined {
  if (entry === undefined) return undefined;
  if (entry.kind === "type") return otherInstance(context, part, entry) ?? entry;
  if (entry.kind === "template") return classInstance(context, entry, part);
  return undefined;
}

/** Inside a class template its name means the instance itself, with arguments of its own another one. */
function otherInstance(context: Context, part: NamePart, entry: TypeSymbol): TypeSymbol | undefined {
  if (part.templateArguments === undefined || entry.type.kind !== "record") return undefined;
  const instance = context.unit.instances.get(entry.type.record);
  return instance && classInstance(context, instance.template, part);
}

function qualifierOf(context: Context, part: NamePart, entry: Entry | undefined): Qualifier | undefined {
  if (entry?.kind === "namespace") return { kind: "scope", scope: entry.scope };
  const symbol = typeOfPart(context, part, entry);
  if (symbol === undefined) return undefined;
  refer(context, part, symbol);
  const { type } = symbol;
  if (type.kind === "record") {
    const scope = context.unit.classes.get(type.record)?.scope;
    return scope === undefined ? undefined : { kind: "scope", scope };
  }
  if (type.kind !== "enumeration") return undefined;
  const enumerators = context.unit.enumerators.get(type.enumeration);
  return enumerators === undefined ? undefined : { kind: "enumeration", enumerators };
}

/** The scope that the parts before the last name, for definitions such as `void C::f() {}`. */
export function scopeOfQualifiers(context: Context, name: Name): Scope | undefined {
  let scope = name.global ? globalScope(context.scope) : undefined;
  for (const part of name.parts.slice(0, -1)) {
    const entry: Entry | undefined =
      scope === undefined ? lookup(context.scope, part.text) : lookupHere(scope, part.text);
    const qualifier = qualifierOf(context, part, entry);
    if (qualifier?.kind !== "scope") return undefined;
    scope = qualifier.scope;
  }
  return scope;
}

/** What a name means here, qualified or not; undefined for a name never declared. */
export function resolve(context: Context, name: Name): Entry | undefined {
  const last = name.parts[name.parts.length - 1];
  if (last === undefined) return undefined;
  if (name.parts.length === 1) {
    return name.global ? lookupHere(globalScope(context.scope), last.text) : lookup(context.scope, last.text);
  }
  let qualifier: Qualifier | undefined = name.global
    ? { kind: "scope", scope: globalScope(context.scope) }
    : undefined;
  for (const part of name.parts.slice(0, -1)) {
    if (qualifier?.kind === "enumeration") return undefined;
    const entry: Entry | undefined =
      qualifier === undefined ? lookup(context.scope, part.text) : lookupHere(qualifier.scope, part.text);
    qualifier = qualifierOf(context, part, entry);
    if (qualifier === undefined) return undefined;
  }
  if (qualifier?.kind === "enumeration") return qualifier.enumerators.get(last.text);
  return qualifier === undefined ? undefined : lookupHere(qualifier.scope, last.text);
}

/** The type a name means; `unknown` with the name as written where it means none. */
export function resolveType(context: Context, name: Name): Type {
  const last = name.parts[name.parts.length - 1];
  if (last === undefined) return { kind: "unknown", name: "" };
  const symbol = typeOfPart(context, last, resolve(context, name)) ?? tagOf(context, name);
  if (symbol !== undefined) {
    refer(context, last, symbol);
    return symbol.type;
  }
  const standard = name.parts.length === 1 || name.parts[0]?.text === "std";
  const fixed = standard ? standardType(last.text, context.unit.model) : undefined;
  return fixed ?? { kind: "unknown", name: nameText(name) };
}

/** In C++ a tag is hidden by a variable of the same name, yet means the type where a type is wanted. */
function tagOf(context: Context, name: Name): TypeSymbol | undefined {
  const only = name.parts.length === 1 ? name.parts[0] : undefined;
  if (only === undefined || context.unit.language === "c") return undefined;
  return lookupTag(context.scope, only.text);
}
