import type { Attribute, Declaration, Declarator, Place, Specifiers } from "../syntax/nodes.ts";
import { sameSignature } from "../types/compare.ts";
import { pointerTo, qualify, referenceTo } from "../types/derive.ts";
import { standardType } from "../types/standard-names.ts";
import type { FunctionType, RecordDeclaration, Type } from "../types/types.ts";
import { typeOfWords } from "../types/words.ts";
import { constructorInitializers } from "./constructor-initializers.ts";
import { atOf, type BodyContext, type Context, deeper, inScope, refer } from "./context.ts";
import { contextsOf, declaredType, functionPart, parameterType } from "./declarators.ts";
import { typedInitializer } from "./initializers.ts";
import { functionLinkage, vectorOf } from "./linkage.ts";
import { scopeOfQualifiers } from "./names.ts";
import type { At, DefaultArgument, FunctionDefinition, FunctionSymbol, Variable } from "./nodes.ts";
import { blockScope, enclosingRegion, lookup, type OverloadSet, type Scope } from "./scope.ts";
import { isDeduced, typeOfSpecifiers } from "./specifiers.ts";
import { typeBlock } from "./statements.ts";
import { DeclaredFunction, DeclaredVariable } from "./symbols.ts";

/** Under this name a class keeps its constructors: its own name means the type. */
export const constructorName = "(constructor)";

export type FunctionSyntax = Extract<Declaration, { kind: "function" }>;

interface Header {
  readonly name: string;
  /** The scope it is declared in: a class, a namespace, the file. */
  readonly region: Scope;
  /** Where the names in it are looked up: the region, or a template's parameters before it. */
  readonly lookupScope: Scope;
  readonly record: RecordDeclaration | undefined;
  readonly special: FunctionSymbol["special"];
  readonly namePlace: Place;
}

/** `inside` is where names are looked up instead: the class in which a friend is defined (C++11 11.3p7). */
function headerOf(context: Context, declarator: Declarator, inside?: Scope): Header | undefined {
  const parts = declarator.name?.parts ?? [];
  const last = parts[parts.length - 1];
  if (last === undefined || declarator.name === undefined) return undefined;
  const isQualified = parts.length > 1 || declarator.name.global;
  const region = isQualified ? scopeOfQualifiers(context, declarator.name) : enclosingRegion(context.scope);
  if (region === undefined) return undefined;
  const lookupScope = inside ?? (isQualified || context.scope.kind === "block" ? region : context.scope);
  const ownName = region.record && context.unit.classes.get(region.record)?.ownName;
  const isConstructor = region.record !== undefined && last.text === ownName;
  const name = isConstructor ? constructorName : last.text.replace(/^operator\s+(?=\W)/, "operator");
  return { name, region, lookupScope, record: region.record, special: specialOf(name), namePlace: last };
}

function specialOf(name: string): FunctionSymbol["special"] {
  if (name === constructorName) return "constructor";
  if (name.startsWith("~")) return "destructor";
  if (!name.startsWith("operator")) return undefined;
  if (/^operator[^\w\s]/.test(name) || /^operator (new|delete)/.test(name)) return "operator";
  return /^operator\s/.test(name) ? "conversion" : undefined;
}

/** The overloads of a name in a scope; undefined where the name means something else there. */
export function overloadsIn(scope: Scope, name: string): OverloadSet | undefined {
  const entry = scope.names.get(name);
  if (entry?.kind === "overloads") return entry;
  if (entry !== undefined && entry.kind !== "type") return undefined;
  const set = emptySet(name);
  scope.names.set(name, set);
  return set;
}

function emptySet(name: string): OverloadSet {
  return { kind: "overloads", name, functions: [], templates: [] };
}

function conversionTarget(context: Context, name: string): Type {
  const words = name.slice("operator".length).trim().split(/\s+/);
  const signs = words.filter((word) => /^\W/.test(word)).join("");
  const named = words.filter((word) => /^\w/.test(word) && word !== "const" && word !== "volatile");
  const base = namedType(context, named);
  if (base === undefined) return { kind: "unknown", name: words.join(" ") };
  const qualified = qualify(base, { const: words.includes("const"), volatile: words.includes("volatile") });
  switch (signs) {
    case "":
      return base;
    case "*":
      return pointerTo(qualified);
    case "&":
      return referenceTo(qualified, "lvalue");
    default:
      return { kind: "unknown", name: words.join(" ") };
  }
}

function namedType(context: Context, words: readonly string[]): Type | undefined {
  const known = typeOfWords(words, context.unit.model);
  const [only] = words;
  if (known !== undefined || only === undefined || words.length > 1) return known;
  const entry = lookup(context.scope, only);
  return entry?.kind === "type" ? entry.type : standardType(only, context.unit.model);
}

/** Declares a function without a body of its own: `= default`, `= delete`, `= 0`. */
export function declareBodyless(
  context: Context,
  syntax: Extract<Declaration, { kind: "special-function" }>,
): void {
  const symbol = declareFunction(context, syntax.specifiers, syntax.declarator, syntax);
  if (symbol !== undefined) symbol.bodyless = syntax.special;
}

/** Declares a function, or finds the one that an earlier declaration made. */
export function declareFunction(
  context: Context,
  specifiers: Specifiers,
  declarator: Declarator,
  whole: Place,
  lookIn?: Scope,
): DeclaredFunction | undefined {
  const header = headerOf(context, declarator, lookIn);
  const part = functionPart(declarator);
  if (header === undefined || part === undefined) return undefined;
  const base =
    header.special === "conversion"
      ? conversionTarget(context, header.name)
      : specifiers.type.kind === "none" && header.special !== undefined
        ? context.unit.types.void
        : typeOfSpecifiers(context, specifiers);
  const inside = header.lookupScope === context.scope ? context : inScope(context, header.lookupScope);
  const type = declaredType(inside, base, declarator);
  if (type.kind !== "function") return undefined;
  const isInstance = header.lookupScope.kind === "template";
  // An instance of a template is found through its template, also from within its own body.
  const set = isInstance ? emptySet(header.name) : overloadsIn(header.region, header.name);
  if (set === undefined) return undefined;
  const same = set.functions.find((candidate) => isSame(context, candidate, type));
  const isInherited = same !== undefined && header.record !== undefined && same.memberOf !== header.record;
  if (isInherited) set.functions.splice(set.functions.indexOf(same), 1);
  const known = isInherited ? undefined : same;
  const symbol =
    known instanceof DeclaredFunction
      ? redeclare(context, known, type, attributesOf(specifiers, declarator), whole)
      : addFunction(context, header, set, type, specifiers, declarator, whole);
  symbol.parameterNames = part.parameters.map((parameter) => parameter.declarator.name?.parts[0]?.text);
  refer(context, header.namePlace, symbol);
  takeDefaults(
    symbol,
    part.parameters.map((parameter) => defaultOf(inside, parameter)),
  );
  return symbol;
}

function attributesOf(specifiers: Specifiers, declarator: Declarator): readonly Attribute[] {
  return [...specifiers.attributes, ...declarator.attributes];
}

function isSame(context: Context, candidate: FunctionSymbol, type: FunctionType): boolean {
  return context.unit.language === "c" || context.unit.linkage === "c" || sameSignature(candidate.type, type);
}

function redeclare(
  context: Context,
  known: DeclaredFunction,
  type: FunctionType,
  attributes: readonly Attribute[],
  whole: Place,
): DeclaredFunction {
  context.unit.declaredAgain += 1;
  known.declarations.push(atOf(context, whole));
  known.attributes = [...known.attributes, ...attributes];
  if (!isDeduced(type.returns) && !known.isDefined) known.type = type;
  return known;
}

function addFunction(
  context: Context,
  header: Header,
  set: OverloadSet,
  type: FunctionType,
  specifiers: Specifiers,
  declarator: Declarator,
  whole: Place,
): DeclaredFunction {
  const { name, region, record } = header;
  const at = atOf(context, header.namePlace);
  const attributes = attributesOf(specifiers, declarator);
  const shown = record !== undefined && header.special === "constructor" ? at.first.text : name;
  const qualifiedName = `${region.prefix}${shown}`;
  const symbol = new DeclaredFunction({
    phase: context.unit.phase,
    name: shown,
    qualifiedName,
    linkageName:
      header.lookupScope.kind === "template"
        ? undefined
        : functionLinkage(context, qualifiedName, type, specifiers.storage, region),
    type,
    parameterNames: [],
    memberOf: record,
    isStatic: record !== undefined && specifiers.storage.includes("static"),
    isVirtual: specifiers.storage.includes("virtual") || overrides(region, name, type),
    vector: vectorOf(at.first, attributes),
    special: header.special,
    isExplicit: specifiers.storage.includes("explicit"),
    attributes,
    at,
    declarationAt: atOf(context, whole),
  });
  set.functions.push(symbol);
  if (record !== undefined) context.unit.classes.get(record)?.functions.push(symbol);
  context.unit.symbols.add(symbol);
  return symbol;
}

/** A function is virtual where a base class has a virtual one of its name and parameters (C++11 10.3p2). */
function overrides(region: Scope, name: string, type: FunctionType): boolean {
  return region.bases.some((base) => {
    const entry = base.names.get(name);
    if (entry?.kind === "overloads") {
      const same = entry.functions.find((inherited) => sameSignature(inherited.type, type));
      if (same?.isVirtual === true) return true;
    }
    return overrides(base, name, type);
  });
}

type ParameterSyntax = NonNullable<ReturnType<typeof functionPart>>["parameters"][number];

function defaultOf(context: Context, parameter: ParameterSyntax): DefaultArgument | undefined {
  const { defaultValue } = parameter;
  if (defaultValue === undefined) return undefined;
  return () =>
    typedInitializer(context, parameterType(context, parameter), {
      kind: "value",
      value: defaultValue,
      first: defaultValue.first,
      end: defaultValue.end,
    });
}

function takeDefaults(symbol: DeclaredFunction, given: FunctionSymbol["defaults"]): void {
  if (!given.some((value) => value !== undefined)) return;
  symbol.defaults = given.map((value, index) => value ?? symbol.defaults[index]);
}

/** A function whose body may be put in the place of another. */
export interface DefinedFunction {
  readonly symbol: DeclaredFunction;
  /** Where names in its header and body are looked up. */
  readonly outer: Scope;
}

/** Declares a function and keeps its body, to be typed when first asked for. */
export function defineFunction(
  context: Context,
  syntax: FunctionSyntax,
  lookIn?: Scope,
): DefinedFunction | undefined {
  const symbol = declareFunction(context, syntax.specifiers, syntax.declarator, syntax, lookIn);
  const part = functionPart(syntax.declarator);
  if (symbol === undefined || part === undefined) return undefined;
  const header = headerOf(context, syntax.declarator, lookIn);
  if (header !== undefined) symbol.at = atOf(context, header.namePlace);
  symbol.declarationAt = atOf(context, syntax);
  const outer = header?.lookupScope ?? context.scope;
  symbol.define(() => deeper(context, () => readBody(context, outer, syntax, symbol)));
  return { symbol, outer };
}

/** Gives a function another body; its header has to be as it was. */
export function replaceBody(
  context: Context,
  { symbol, outer }: DefinedFunction,
  syntax: FunctionSyntax,
): void {
  symbol.redefine(atOf(context, syntax), () =>
    deeper(context, () => readBody(context, outer, syntax, symbol)),
  );
}

function readBody(
  context: Context,
  outer: Scope,
  syntax: FunctionSyntax,
  symbol: DeclaredFunction,
): FunctionDefinition {
  const scope = blockScope(outer);
  const self = selfOf(symbol);
  const { returns } = symbol.type;
  const body: BodyContext = { returns: isDeduced(returns) ? undefined : returns, self };
  const inside: Context = { unit: context.unit, passage: context.passage, scope, body };
  const parameters = declareParameters(inside, syntax.declarator);
  const memberInitializers =
    symbol.special === "constructor" && symbol.memberOf !== undefined
      ? constructorInitializers(inside, symbol.memberOf, syntax.memberInitializers)
      : [];
  const block = typeBlock({ ...inside, scope: blockScope(scope) }, syntax.body);
  if (isDeduced(returns)) {
    symbol.type = { ...symbol.type, returns: body.returns ?? context.unit.types.void };
  }
  return { parameters, memberInitializers, body: block, self };
}

function selfOf(symbol: FunctionSymbol): Variable | undefined {
  if (symbol.memberOf === undefined || symbol.isStatic) return undefined;
  const isConst = symbol.type.const === true;
  const type = pointerTo(
    qualify({ kind: "record", record: symbol.memberOf }, { const: isConst, volatile: false }),
  );
  return localVariable("this", type, symbol.at, "parameter");
}

/** A variable that no declarator declares: a parameter, `this`, what a range-for steps through. */
export function localVariable(
  name: string,
  type: Type,
  at: At,
  storage: "parameter" | "local",
): DeclaredVariable {
  return new DeclaredVariable({
    name,
    qualifiedName: name,
    linkageName: undefined,
    type,
    storage,
    constexpr: false,
    programMemory: false,
    attributes: [],
    at,
    declarationAt: at,
  });
}

/** Declares the parameters of a definition in its scope; unnamed ones keep their place in the list. */
export function declareParameters(context: Context, declarator: Declarator): Variable[] {
  const part = functionPart(declarator);
  const variables: Variable[] = [];
  for (const parameter of part?.parameters ?? []) {
    const own = contextsOf(context, parameter).flatMap(
      (inside) => declareParameter(inside, context, parameter) ?? [],
    );
    variables.push(...own);
    const name = parameter.declarator.name?.parts[0];
    if (parameter.pack && name !== undefined)
      context.scope.names.set(name.text, { kind: "pack", elements: own });
  }
  return variables;
}

/** Declares one parameter, whose type is read `inside`. */
function declareParameter(
  inside: Context,
  context: Context,
  parameter: ParameterSyntax,
): Variable | undefined {
  const type = parameterType(inside, parameter);
  if (type.kind === "void" && parameter.declarator.name === undefined) return undefined;
  const name = parameter.declarator.name?.parts[0];
  const at = atOf(context, name ?? parameter);
  const variable = localVariable(name?.text ?? "", type, at, "parameter");
  if (name !== undefined) {
    context.scope.names.set(name.text, variable);
    refer(context, name, variable);
  }
  return variable;
}
