import type { DeclaratorPart, Expression, NamePart, Parameter } from "../syntax/nodes.ts";
import { sameUnqualified } from "../types/compare.ts";
import { qualifiersOf, qualify, referenceTo, unqualified } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import type { Context } from "./context.ts";
import { functionPart } from "./declarators.ts";
import { integerNode, valueType } from "./make.ts";
import type { At, TypedExpression } from "./nodes.ts";
import type { TemplateArgumentValue, TemplateEntry } from "./scope.ts";
import { isPack, parameterName } from "./template-arguments.ts";

/** Arguments found so far, by parameter name. */
type Found = Map<string, TemplateArgumentValue>;

function parametersOf(template: TemplateEntry): readonly Parameter[] | undefined {
  const { declaration } = template;
  const declarator =
    declaration.kind === "function" || declaration.kind === "special-function"
      ? declaration.declarator
      : declaration.kind === "simple"
        ? declaration.declarators[0]?.declarator
        : undefined;
  return declarator && functionPart(declarator)?.parameters;
}

/**
 * Template arguments of a call: those written, then those that the call's arguments give away (C++11
 * 14.8.2.1). Undefined where the arguments contradict each other or do not fit in number.
 */
export function deduceArguments(
  context: Context,
  template: TemplateEntry,
  explicit: readonly TemplateArgumentValue[],
  given: readonly TypedExpression[],
): TemplateArgumentValue[] | undefined {
  const parameters = parametersOf(template);
  if (parameters === undefined) return undefined;
  const last = parameters.at(-1);
  const isOpen = last?.pack === true;
  if (given.length > parameters.length && !isOpen) return undefined;
  const names = template.parameters.map(parameterName);
  const found: Found = new Map();
  for (const [index, argument] of explicit.entries()) {
    const name = names[index];
    if (name !== undefined) found.set(name, argument);
  }
  const open = new Set(names.filter((name) => name !== undefined && !found.has(name)));
  const single = isOpen ? parameters.length - 1 : parameters.length;
  for (const [index, argument] of given.slice(0, single).entries()) {
    const parameter = parameters[index];
    if (parameter !== undefined && !fromArgument(context, parameter, argument, open, found)) return undefined;
  }
  const pack = template.parameters.findIndex(isPack);
  if (pack >= 0) {
    if (explicit.length > pack || !isOpen || last === undefined) return undefined;
    const elements = packElements(context, last, names[pack], given.slice(single));
    if (elements === undefined) return undefined;
    found.set(names[pack] ?? "", { kind: "pack", elements });
  }
  const deduced: TemplateArgumentValue[] = [];
  for (const name of names) {
    const value = name === undefined ? undefined : found.get(name);
    if (value === undefined) break;
    deduced.push(value);
  }
  return deduced;
}

/** What each argument behind the others says that an element of the pack is. */
function packElements(
  context: Context,
  parameter: Parameter,
  name: string | undefined,
  given: readonly TypedExpression[],
): TemplateArgumentValue[] | undefined {
  const elements: TemplateArgumentValue[] = [];
  for (const argument of given) {
    const own: Found = new Map();
    const fits = fromArgument(context, parameter, argument, new Set([name]), own);
    const value = fits ? own.get(name ?? "") : undefined;
    if (value === undefined) return undefined;
    elements.push(value);
  }
  return elements;
}

function fromArgument(
  context: Context,
  parameter: Parameter,
  argument: TypedExpression,
  open: ReadonlySet<string | undefined>,
  found: Found,
): boolean {
  const { type } = parameter.specifiers;
  if (type.kind !== "named") return true;
  const part = type.name.parts[type.name.parts.length - 1];
  if (part === undefined) return true;
  const { parts } = parameter.declarator;
  const isReference = parts[0]?.kind === "reference";
  const peeled = peel(
    context,
    parts,
    isReference ? argument.type : valueType(argument),
    argument.at,
    open,
    found,
  );
  if (peeled === undefined) return !open.has(part.text);
  const plain = parts.length === 0 ? unqualified(peeled) : remaining(peeled, parameter.specifiers);
  const isForwarded = isForwarding(parameter, open) && argument.lvalue && argument.xvalue !== true;
  const deduced = isForwarded ? referenceTo(plain, "lvalue") : plain;
  return matchType(context, part, deduced, open, found, argument.at);
}

/** The qualifiers that the parameter does not say itself belong to what is deduced (C++11 14.8.2.1p3). */
function remaining(type: Type, said: Parameter["specifiers"]): Type {
  const { const: isConst, volatile } = qualifiersOf(type);
  return qualify(unqualified(type), { const: isConst && !said.const, volatile: volatile && !said.volatile });
}

/** `T &&`, which takes objects that stay and such as are about to end: `T` is then a reference (C++11 14.8.2.1p3). */
function isForwarding({ specifiers, declarator }: Parameter, open: ReadonlySet<string | undefined>): boolean {
  const { type } = specifiers;
  const [only] = declarator.parts;
  if (type.kind !== "named" || declarator.parts.length > 1 || only?.kind !== "reference") return false;
  const [name] = type.name.parts;
  const isPlain = !specifiers.const && !specifiers.volatile && name?.templateArguments === undefined;
  return only.rvalue && isPlain && type.name.parts.length === 1 && open.has(name?.text);
}

/** What the specifiers stand for, once pointers, references and arrays around the name are taken off. */
function peel(
  context: Context,
  parts: readonly DeclaratorPart[],
  type: Type,
  at: At,
  open: ReadonlySet<string | undefined>,
  found: Found,
): Type | undefined {
  let rest: Type = type;
  for (const part of parts) {
    if (part.kind === "reference") continue;
    if (part.kind === "function") return undefined;
    if (part.kind === "pointer") {
      if (rest.kind !== "pointer") return undefined;
      rest = rest.to;
      continue;
    }
    if (rest.kind === "pointer") {
      rest = rest.to;
      continue;
    }
    if (rest.kind !== "array") return undefined;
    takeLength(context, part.length, rest.length, at, open, found);
    rest = rest.of;
  }
  return rest;
}

/** `T (&a)[N]` gives N away. */
function takeLength(
  context: Context,
  syntax: Expression | undefined,
  length: number | undefined,
  at: At,
  open: ReadonlySet<string | undefined>,
  found: Found,
): void {
  const name = syntax?.kind === "name" ? syntax.name.parts[0]?.text : undefined;
  if (name === undefined || length === undefined || !open.has(name) || found.has(name)) return;
  found.set(name, { kind: "value", value: integerNode(at, BigInt(length), context.unit.types.size) });
}

function matchType(
  context: Context,
  part: NamePart,
  type: Type,
  open: ReadonlySet<string | undefined>,
  found: Found,
  at: At,
): boolean {
  if (part.templateArguments !== undefined) return matchInstance(context, part, type, open, found, at);
  if (!open.has(part.text)) return true;
  const earlier = found.get(part.text);
  if (earlier === undefined) {
    found.set(part.text, { kind: "type", type });
    return true;
  }
  return earlier.kind === "type" && sameUnqualified(earlier.type, type);
}

/** A parameter `Ring<T, N> &` matched with an object of `Ring<uint8_t, 8>`. */
function matchInstance(
  context: Context,
  part: NamePart,
  type: Type,
  open: ReadonlySet<string | undefined>,
  found: Found,
  at: At,
): boolean {
  const instance = type.kind === "record" ? context.unit.instances.get(type.record) : undefined;
  if (instance === undefined || instance.template.name !== part.text) return false;
  for (const [index, syntax] of (part.templateArguments ?? []).entries()) {
    const argument = instance.arguments[index];
    const name = openName(syntax);
    if (argument === undefined || name === undefined || !open.has(name) || found.has(name)) continue;
    found.set(
      name,
      argument.kind === "value" ? { kind: "value", value: { ...argument.value, at } } : argument,
    );
  }
  return true;
}

function openName(argument: NonNullable<NamePart["templateArguments"]>[number]): string | undefined {
  if (argument.kind === "value") {
    return argument.value.kind === "name" ? argument.value.name.parts[0]?.text : undefined;
  }
  const { type } = argument.type.specifiers;
  return type.kind === "named" && argument.type.declarator.parts.length === 0
    ? type.name.parts[0]?.text
    : undefined;
}
