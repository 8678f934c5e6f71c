import type { Declaration, Name } from "../syntax/nodes.ts";
import { sameSignature } from "../types/compare.ts";
import { renamed } from "../types/derive.ts";
import { atOf, type Context, inScope, refer } from "./context.ts";
import { functionPart } from "./declarators.ts";
import {
  constructorName,
  declareBodyless,
  declareFunction,
  defineFunction,
  overloadsIn,
} from "./functions.ts";
import { unnamedNamespace } from "./linkage.ts";
import { resolve, scopeOfQualifiers } from "./names.ts";
import type { Variable } from "./nodes.ts";
import { makeScope, type OverloadSet, type Scope } from "./scope.ts";
import { typeOfSpecifiers, typeOfTypeName } from "./specifiers.ts";
import { declareTemplate, markUnclear } from "./template-declarations.ts";
import { declareTypeName, declareVariable } from "./variables.ts";

/** Declares what a declaration says in `context.scope`; gives the variables it declares. */
export function declare(context: Context, declaration: Declaration): readonly Variable[] {
  switch (declaration.kind) {
    case "simple":
      return declareSimple(context, declaration);
    case "function":
      defineFunction(context, declaration);
      return [];
    case "special-function":
      declareBodyless(context, declaration);
      return [];
    case "namespace":
      declareNamespace(context, declaration);
      return [];
    case "linkage":
      declareLinkage(context, declaration);
      return [];
    case "template":
      declareTemplate(context, declaration);
      return [];
    case "alias":
      declareTypeName(
        context,
        declaration.name,
        renamed(typeOfTypeName(context, declaration.type), declaration.name),
        atOf(context, declaration),
      );
      return [];
    case "namespace-alias": {
      const target = resolve(context, declaration.target);
      if (target?.kind === "namespace") context.scope.names.set(declaration.name, target);
      return [];
    }
    case "using":
      declareUsing(context, declaration.name, declaration.namespace);
      return [];
    case "not-understood":
      markUnclear(context, declaration);
      return [];
    case "access":
    case "static-assert":
    case "assembly":
    case "empty":
      return [];
  }
}

function declareSimple(context: Context, declaration: Extract<Declaration, { kind: "simple" }>): Variable[] {
  const { specifiers, declarators } = declaration;
  const isTypedef = specifiers.storage.includes("typedef");
  const hint = isTypedef ? (declarators[0]?.declarator.name?.parts[0]?.text ?? "") : "";
  const base = typeOfSpecifiers(context, specifiers, hint);
  const variables: Variable[] = [];
  for (const init of declarators) {
    if (!isTypedef && functionPart(init.declarator) !== undefined) {
      declareFunction(context, specifiers, init.declarator, declaration);
      continue;
    }
    const variable = declareVariable(context, declaration, base, init);
    if (variable !== undefined) variables.push(variable);
  }
  return variables;
}

function namespaceScope(outer: Scope, name: string): Scope {
  const entry = outer.names.get(name);
  if (entry?.kind === "namespace") return entry.scope;
  const scope = makeScope("namespace", outer, `${outer.prefix}${name}::`);
  outer.names.set(name, { kind: "namespace", scope });
  return scope;
}

function declareNamespace(context: Context, declaration: Extract<Declaration, { kind: "namespace" }>): void {
  let { scope } = context;
  const parts = declaration.name?.parts ?? [];
  let outer = scope;
  for (const part of parts.length === 0 ? [{ text: unnamedNamespace }] : parts) {
    outer = scope;
    scope = namespaceScope(outer, part.text);
  }
  // Its names are as good as those of the namespace around it (C++11 7.3.1.1, 7.3.1p8).
  const isOpen = parts.length === 0 || declaration.inline;
  if (isOpen && !outer.opened.includes(scope)) outer.opened.push(scope);
  const inside = inScope(context, scope);
  for (const member of declaration.members) declare(inside, member);
}

function declareLinkage(context: Context, declaration: Extract<Declaration, { kind: "linkage" }>): void {
  const { unit } = context;
  const outer = unit.linkage;
  unit.linkage = declaration.language === "C" ? "c" : "c++";
  for (const member of declaration.members) declare(context, member);
  unit.linkage = outer;
}

/** `using namespace N;` opens it, `using N::name;` and `using Base::name;` bring one name in. */
function declareUsing(context: Context, name: Name, opensNamespace: boolean): void {
  const entry = resolve(context, name);
  const last = name.parts[name.parts.length - 1];
  if (last === undefined) return;
  if (entry === undefined) {
    inheritConstructors(context, name);
    return;
  }
  if (opensNamespace) {
    if (entry.kind === "namespace") context.scope.opened.push(entry.scope);
    return;
  }
  if (entry.kind === "overloads") {
    bringIn(context.scope, last.text, entry);
    return;
  }
  if (entry.kind === "type") refer(context, last, entry);
  context.scope.names.set(last.text, entry);
}

/** Functions of a base class come beside the class's own, which hide those of the same parameters (7.3.3p15). */
function bringIn(scope: Scope, name: string, brought: OverloadSet): void {
  const set = overloadsIn(scope, name);
  if (set === undefined) return;
  const own = [...set.functions];
  set.functions.push(
    ...brought.functions.filter((each) => !own.some((other) => sameSignature(other.type, each.type))),
  );
  set.templates.push(...brought.templates);
}

/** `using Base::Base;` (C++11 12.9). */
function inheritConstructors(context: Context, name: Name): void {
  const base = scopeOfQualifiers(context, name)?.record;
  const state = base && context.unit.classes.get(base);
  if (state === undefined || state.ownName !== name.parts[name.parts.length - 1]?.text) return;
  const inherited = state.scope.names.get(constructorName);
  if (inherited?.kind !== "overloads") return;
  overloadsIn(context.scope, constructorName)?.functions.push(...inherited.functions);
}
