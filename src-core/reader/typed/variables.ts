import type { Declaration, InitDeclarator, Initializer, Specifiers } from "../syntax/nodes.ts";
import { arrayOf, qualify, referred, renamed } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { atOf, type Context, inScope, refer } from "./context.ts";
import { declaredType } from "./declarators.ts";
import { deducedFromTyped } from "./deduction.ts";
import { typeExpression } from "./expressions.ts";
import { initializerFromTyped, initializerOf, typedInitializer } from "./initializers.ts";
import { hasAttribute, storageOf, variableLinkage } from "./linkage.ts";
import { unknownType } from "./make.ts";
import { scopeOfQualifiers } from "./names.ts";
import type { At, TypedInitializer, TypeSymbol, Variable } from "./nodes.ts";
import { enclosingRegion, globalScope, type Scope } from "./scope.ts";
import { isDeduced } from "./specifiers.ts";
import { DeclaredVariable } from "./symbols.ts";

type SimpleDeclaration = Extract<Declaration, { kind: "simple" }>;

/** Declares one declarator of a simple declaration that is no function: a typedef or a variable. */
export function declareVariable(
  context: Context,
  declaration: SimpleDeclaration,
  base: Type,
  init: InitDeclarator,
): Variable | undefined {
  const { declarator } = init;
  const { specifiers } = declaration;
  const part = declarator.name?.parts[declarator.name.parts.length - 1];
  if (part === undefined) return undefined;
  let type = declaredType(context, base, declarator);
  if (specifiers.storage.includes("typedef")) {
    declareTypeName(context, part.text, renamed(type, part.text), atOf(context, part));
    return undefined;
  }
  if (specifiers.storage.includes("constexpr")) type = qualify(type, { const: true, volatile: false });
  const variable = findOrMake(context, declaration, init, type);
  if (variable === undefined) return undefined;
  refer(context, part, variable);
  initialize(initializerContext(context, init), variable, init, declaration);
  return variable;
}

/** The initialiser of `int C::x = y` is read inside C (C++11 3.4.1p13). */
function initializerContext(context: Context, init: InitDeclarator): Context {
  const { name } = init.declarator;
  const region = name !== undefined && name.parts.length > 1 ? scopeOfQualifiers(context, name) : undefined;
  return region === undefined ? context : inScope(context, region);
}

/** Gives a name to a type: `typedef`, `using name = ...`, a template's type parameter. */
export function declareTypeName(context: Context, name: string, type: Type, at: At): void {
  const symbol: TypeSymbol = { kind: "type", name, type, at };
  context.scope.names.set(name, symbol);
  if (context.scope.kind !== "block") context.unit.symbols.add(symbol);
  context.passage.references.push({ token: at.first, target: symbol });
}

function regionOf(context: Context, init: InitDeclarator, specifiers: Specifiers): Scope | undefined {
  const { name } = init.declarator;
  if (name !== undefined && (name.parts.length > 1 || name.global)) return scopeOfQualifiers(context, name);
  if (context.scope.kind === "block" && specifiers.storage.includes("extern")) {
    return globalScope(context.scope);
  }
  return context.scope;
}

function findOrMake(
  context: Context,
  declaration: SimpleDeclaration,
  init: InitDeclarator,
  type: Type,
): DeclaredVariable | undefined {
  const { declarator } = init;
  const { specifiers } = declaration;
  const part = declarator.name?.parts[declarator.name.parts.length - 1];
  const scope = regionOf(context, init, specifiers);
  if (part === undefined || scope === undefined) return undefined;
  const declarationAt = atOf(context, declaration);
  const earlier = scope.kind === "block" ? undefined : scope.names.get(part.text);
  if (earlier instanceof DeclaredVariable) {
    redeclare(context, earlier, declaration, init, type);
    return earlier;
  }
  const region = enclosingRegion(scope);
  const isLocal = scope.kind === "block" && context.body !== undefined;
  const qualifiedName = isLocal ? part.text : `${region.prefix}${part.text}`;
  const linkageName = isLocal
    ? undefined
    : variableLinkage(context, qualifiedName, type, specifiers.storage, region);
  const attributes = [...specifiers.attributes, ...declarator.attributes];
  const variable = new DeclaredVariable({
    name: part.text,
    qualifiedName,
    linkageName,
    type,
    storage: storageOf(context, specifiers, linkageName),
    constexpr: specifiers.storage.includes("constexpr"),
    programMemory: hasAttribute(attributes, "progmem"),
    attributes,
    at: atOf(context, part),
    declarationAt,
  });
  scope.names.set(part.text, variable);
  if (isLocal) context.passage.locals.push(variable);
  else context.unit.symbols.add(variable);
  return variable;
}

function redeclare(
  context: Context,
  variable: DeclaredVariable,
  declaration: SimpleDeclaration,
  init: InitDeclarator,
  type: Type,
): void {
  context.unit.declaredAgain += 1;
  const declarationAt = atOf(context, declaration);
  const { specifiers } = declaration;
  const attributes = [...specifiers.attributes, ...init.declarator.attributes];
  variable.declarations.push(declarationAt);
  variable.attributes = [...variable.attributes, ...attributes];
  variable.programMemory ||= hasAttribute(attributes, "progmem");
  variable.constexpr ||= specifiers.storage.includes("constexpr");
  const completes = variable.type.kind !== "array" || variable.type.length === undefined;
  if (completes && !isDeduced(type)) variable.type = type;
  const defines = init.initializer !== undefined || !specifiers.storage.includes("extern");
  if (defines && variable.initializer === undefined) {
    const part = init.declarator.name?.parts[init.declarator.name.parts.length - 1];
    if (part !== undefined) variable.at = atOf(context, part);
    variable.declarationAt = declarationAt;
  }
}

/** Whether the initialiser says something about the type: the length of `[]`, what `auto` is. */
function completesType(type: Type): boolean {
  return isDeduced(type) || (type.kind === "array" && type.length === undefined);
}

function initialize(
  context: Context,
  variable: DeclaredVariable,
  init: InitDeclarator,
  declaration: SimpleDeclaration,
): void {
  const { initializer } = init;
  const read = (): TypedInitializer | undefined =>
    initializer === undefined
      ? defaultInitializer(context, variable, declaration)
      : typedInitializer(context, variable.type, initializer);
  if (initializer === undefined && !isDefaultConstructed(context, variable, declaration)) return;
  if (initializer !== undefined && completesType(variable.type)) {
    const typed = isDeduced(variable.type) ? deduce(context, variable, initializer) : read();
    variable.initializer = typed;
    variable.type = completed(variable.type, typed);
    return;
  }
  variable.initializer = variable.storage === "local" || variable.storage === "static-local" ? read() : read;
}

/** Finds out what `auto` is; a lambda is read once, for each reading makes a class of its own. */
function deduce(context: Context, variable: DeclaredVariable, initializer: Initializer): TypedInitializer {
  const syntax = initializer.kind === "value" ? initializer.value : initializer.arguments[0];
  const value = syntax && typeExpression(context, syntax);
  variable.type = value === undefined ? unknownType : deducedFromTyped(variable.type, value);
  return value === undefined
    ? typedInitializer(context, variable.type, initializer)
    : initializerFromTyped(context, variable.type, value);
}

function isDefaultConstructed(context: Context, variable: Variable, declaration: SimpleDeclaration): boolean {
  return (
    context.unit.language === "c++" &&
    variable.type.kind === "record" &&
    !declaration.specifiers.storage.includes("extern") &&
    context.scope.kind !== "record"
  );
}

function defaultInitializer(
  context: Context,
  variable: Variable,
  declaration: SimpleDeclaration,
): TypedInitializer | undefined {
  return initializerOf(context, referred(variable.type), [], atOf(context, declaration));
}

/** An array takes its missing length from its initialiser (C11 6.7.9p22). */
export function completed(type: Type, initializer: TypedInitializer | undefined): Type {
  if (type.kind !== "array" || type.length !== undefined || initializer === undefined) return type;
  if (initializer.kind === "aggregate") return arrayOf(type.of, lengthOf(initializer));
  if (initializer.kind === "value" && initializer.value.type.kind === "array") {
    return arrayOf(type.of, initializer.value.type.length);
  }
  return type;
}

function lengthOf(initializer: Extract<TypedInitializer, { kind: "aggregate" }>): number {
  return initializer.entries.reduce(
    (length, { target }) => ("index" in target ? Math.max(length, target.upTo + 1) : length),
    0,
  );
}
