import { evaluate } from "../constants/evaluate.ts";
import type { Declaration, NamePart, RecordSpecifier, TemplateArgument } from "../syntax/nodes.ts";
import { typeText } from "../types/text.ts";
import type { RecordDeclaration } from "../types/types.ts";
import { atOf, type Context, deeper, note } from "./context.ts";
import { declare } from "./declarations.ts";
import { typeExpression } from "./expressions.ts";
import { declareFunction, defineFunction } from "./functions.ts";
import { resolveType } from "./names.ts";
import type { FunctionSymbol, TypedExpression, TypeSymbol } from "./nodes.ts";
import { matchPattern } from "./partial-specialisations.ts";
import { defineRecord } from "./records.ts";
import {
  lookup,
  makeScope,
  type OverloadSet,
  type Scope,
  type TemplateArgumentValue,
  type TemplateEntry,
} from "./scope.ts";
import { typeOfTypeName } from "./specifiers.ts";
import { bindArguments, isPack } from "./template-arguments.ts";
import { deduceArguments } from "./template-deduction.ts";
import { typeKey } from "./type-keys.ts";

/** Equal arguments have equal keys, so that they give the same instance. */
function argumentKey(context: Context, argument: TemplateArgumentValue): string {
  switch (argument.kind) {
    case "type":
      return typeKey(argument.type, context.unit.typeNumbers);
    case "value":
      return argumentText(context, argument);
    case "pack":
      return `{${keyOf(context, argument.elements)}}`;
  }
}

/** An argument as people read it. */
function argumentText(context: Context, argument: TemplateArgumentValue): string {
  if (argument.kind === "type") return typeText(argument.type);
  if (argument.kind === "pack") return textOf(context, argument.elements);
  const value = evaluate(argument.value, context.unit.model);
  return value.kind === "integer" ? String(value.value) : "?";
}

function keyOf(context: Context, given: readonly TemplateArgumentValue[]): string {
  return given.map((argument) => argumentKey(context, argument)).join(", ");
}

function textOf(context: Context, given: readonly TemplateArgumentValue[]): string {
  return given.map((argument) => argumentText(context, argument)).join(", ");
}

function argumentsOf(
  context: Context,
  template: TemplateEntry,
  given: readonly TemplateArgument[] | undefined,
): TemplateArgumentValue[] {
  return (given ?? []).map((argument, index) => {
    if (argument.kind === "type") return { kind: "type", type: typeOfTypeName(context, argument.type) };
    const { value } = argument;
    const wantsType = template.parameters[index]?.kind === "type";
    return wantsType && value.kind === "name"
      ? { kind: "type", type: resolveType(context, value.name) }
      : { kind: "value", value: typeExpression(context, value) };
  });
}

/** Arguments given, then defaults of the template; undefined where one is missing. */
function completed(
  context: Context,
  template: TemplateEntry,
  given: readonly TemplateArgumentValue[],
): TemplateArgumentValue[] | undefined {
  const complete = [...given];
  // What an instance was made of has its pack already.
  if (complete.at(-1)?.kind === "pack") return complete;
  const pack = template.parameters.findIndex(isPack);
  if (pack >= 0) {
    if (pack !== template.parameters.length - 1 || given.length < pack) return undefined;
    return [...given.slice(0, pack), { kind: "pack", elements: given.slice(pack) }];
  }
  for (let index = given.length; index < template.parameters.length; index += 1) {
    const parameter = template.parameters[index];
    const scope = scopeOf(context, template, complete);
    const inside: Context = { unit: context.unit, passage: template.passage, scope, body: undefined };
    if (parameter?.kind === "type" && parameter.defaultType !== undefined) {
      complete.push({ kind: "type", type: typeOfTypeName(inside, parameter.defaultType) });
    } else if (parameter?.kind === "value" && parameter.parameter.defaultValue !== undefined) {
      complete.push({ kind: "value", value: typeExpression(inside, parameter.parameter.defaultValue) });
    } else {
      return undefined;
    }
  }
  return complete;
}

/** A scope in which the template's parameters mean these arguments. */
function scopeOf(context: Context, template: TemplateEntry, given: readonly TemplateArgumentValue[]): Scope {
  const scope = makeScope("template", template.scope, template.scope.prefix);
  bindArguments(
    { unit: context.unit, passage: template.passage, scope, body: undefined },
    template.parameters,
    given,
  );
  return scope;
}

/** The class (or alias) that a template name with arguments means. */
export function classInstance(
  context: Context,
  template: TemplateEntry,
  part: NamePart,
): TypeSymbol | undefined {
  const given = completed(context, template, argumentsOf(context, template, part.templateArguments));
  if (given === undefined) return undefined;
  const key = keyOf(context, given);
  const known = template.instances.get(key)?.symbol;
  if (known !== undefined) return known.kind === "type" ? known : undefined;
  return deeper(context, () => makeInstance(context, template, given, key));
}

function makeInstance(
  context: Context,
  template: TemplateEntry,
  given: readonly TemplateArgumentValue[],
  key: string,
): TypeSymbol | undefined {
  const { declaration } = template;
  const scope = scopeOf(context, template, given);
  const inside: Context = { unit: context.unit, passage: template.passage, scope, body: undefined };
  if (declaration.kind === "alias") {
    const type = typeOfTypeName(inside, declaration.type);
    const symbol: TypeSymbol = { kind: "type", name: template.name, type, at: atOf(inside, declaration) };
    template.instances.set(key, { symbol, arguments: given });
    return symbol;
  }
  const chosen = partialFor(context, template, given, key);
  if (chosen === "unclear") return undefined;
  if (chosen !== undefined) return instantiate(chosen.context, template, given, key, chosen.record, []);
  if (declaration.kind !== "simple" || declaration.specifiers.type.kind !== "record") return undefined;
  const { record } = declaration.specifiers.type;
  return instantiate(inside, template, given, key, record, template.memberDefinitions);
}

interface Specialised {
  readonly context: Context;
  readonly record: RecordSpecifier;
}

/** The partial specialisation for these arguments; which of several is more special is not known. */
function partialFor(
  context: Context,
  template: TemplateEntry,
  given: readonly TemplateArgumentValue[],
  key: string,
): Specialised | "unclear" | undefined {
  if (template.isUnclear) return "unclear";
  const fitting: Specialised[] = [];
  for (const { entry, pattern, record } of template.partial) {
    const found = matchPattern({ ...context, passage: entry.passage }, entry, pattern, given);
    if (found === undefined) continue;
    const scope = scopeOf(context, entry, found);
    const inside: Context = { unit: context.unit, passage: entry.passage, scope, body: undefined };
    const whole = completed(inside, template, argumentsOf(inside, template, pattern));
    if (whole !== undefined && keyOf(context, whole) === key) fitting.push({ context: inside, record });
  }
  return fitting.length > 1 ? "unclear" : fitting[0];
}

/** Reads a class for one set of arguments; `context.scope` knows what the parameters mean. */
function instantiate(
  context: Context,
  template: TemplateEntry,
  given: readonly TemplateArgumentValue[],
  key: string,
  syntax: RecordSpecifier,
  members: readonly TemplateEntry[],
): TypeSymbol {
  const record: RecordDeclaration = {
    keyword: syntax.keyword,
    name: `${template.scope.prefix}${template.name}<${textOf(context, given)}>`,
    complete: false,
    fields: [],
    bases: [],
    polymorphic: false,
    size: 0,
    alignment: 1,
  };
  const at = atOf(context, syntax.name ?? syntax);
  const symbol: TypeSymbol = { kind: "type", name: template.name, type: { kind: "record", record }, at };
  template.instances.set(key, { symbol, arguments: given });
  context.unit.instances.set(record, { template, arguments: given });
  context.scope.names.set(template.name, symbol);
  defineRecord(context, syntax, syntax.members ?? [], record);
  for (const member of members) defineMember(context, member, given);
  return symbol;
}

/** `template <> class C<int> {...}`: what C is for these arguments. */
export function specialise(
  context: Context,
  primary: TemplateEntry,
  part: NamePart,
  record: RecordSpecifier,
): void {
  const written = argumentsOf(context, primary, part.templateArguments);
  const given = completed(context, primary, written) ?? written;
  const scope = makeScope("template", context.scope, context.scope.prefix);
  const key = keyOf(context, given);
  instantiate({ ...context, scope }, primary, given, key, record, primary.memberDefinitions);
}

/** `template <> int f<3>() {...}`: what f is for these arguments. */
export function specialiseFunction(context: Context, part: NamePart, declaration: Declaration): void {
  const set = lookup(context.scope, part.text);
  const templates = set?.kind === "overloads" ? set.templates : [];
  const [primary] = templates;
  const given =
    primary === undefined || templates.length > 1 || part.templateArguments === undefined
      ? undefined
      : completed(context, primary, argumentsOf(context, primary, part.templateArguments));
  const scope = makeScope("template", context.scope, context.scope.prefix);
  const symbol =
    given !== undefined && declaration.kind === "function"
      ? defineFunction({ ...context, scope }, declaration)?.symbol
      : undefined;
  if (primary !== undefined && given !== undefined && symbol !== undefined) {
    primary.instances.set(keyOf(context, given), { symbol, arguments: given });
    return;
  }
  // Of which template, and for which arguments, only deduction could say.
  for (const template of templates) template.isUnclear = true;
  note(context, atOf(context, part), "a specialisation of a function that is not understood");
}

/** Takes a member defined outside its class template into the instances there are and will be. */
export function addMemberDefinition(context: Context, owner: TemplateEntry, member: TemplateEntry): void {
  owner.memberDefinitions.push(member);
  for (const instance of owner.instances.values()) defineMember(context, member, instance.arguments);
}

function defineMember(
  context: Context,
  member: TemplateEntry,
  given: readonly TemplateArgumentValue[],
): void {
  const scope = scopeOf(context, member, given);
  declare({ unit: context.unit, passage: member.passage, scope, body: undefined }, member.declaration);
}

/** The instances of a set's templates that could be meant by a call with these arguments. */
export function templateCandidates(
  context: Context,
  set: OverloadSet,
  part: NamePart | undefined,
  given: readonly TypedExpression[],
): FunctionSymbol[] {
  return set.templates.flatMap((template) => functionInstance(context, template, part, given) ?? []);
}

/** A function template with its arguments as written and as deduced; undefined where one stays open. */
export function functionInstance(
  context: Context,
  template: TemplateEntry,
  part: NamePart | undefined,
  given: readonly TypedExpression[],
): FunctionSymbol | undefined {
  if (template.isUnclear) return undefined;
  const explicit = argumentsOf(context, template, part?.templateArguments);
  const deduced = deduceArguments(context, template, explicit, given);
  const complete = deduced && completed(context, template, deduced);
  if (complete === undefined) return undefined;
  const key = keyOf(context, complete);
  const known = template.instances.get(key)?.symbol;
  if (known !== undefined) return known.kind === "function" ? known : undefined;
  return deeper(context, () => makeFunction(context, template, complete, key));
}

function makeFunction(
  context: Context,
  template: TemplateEntry,
  given: readonly TemplateArgumentValue[],
  key: string,
): FunctionSymbol | undefined {
  const { declaration } = template;
  const scope = scopeOf(context, template, given);
  const inside: Context = { unit: context.unit, passage: template.passage, scope, body: undefined };
  const symbol =
    declaration.kind === "function"
      ? defineFunction(inside, declaration)?.symbol
      : declaration.kind === "simple" && declaration.declarators[0] !== undefined
        ? declareFunction(inside, declaration.specifiers, declaration.declarators[0].declarator, declaration)
        : undefined;
  if (symbol !== undefined) template.instances.set(key, { symbol, arguments: given });
  return symbol;
}
