import type { Declaration, Declarator, NamePart, Place, RecordSpecifier } from "../syntax/nodes.ts";
import { atOf, type Context, note } from "./context.ts";
import { functionPart } from "./declarators.ts";
import { overloadsIn } from "./functions.ts";
import { lookup, type TemplateEntry } from "./scope.ts";
import { isPack } from "./template-arguments.ts";
import { addMemberDefinition, specialise, specialiseFunction } from "./templates.ts";

type TemplateSyntax = Extract<Declaration, { kind: "template" }>;

/** What a template declares, as far as keeping it goes. */
type Templated =
  | { readonly kind: "function"; readonly name: string; readonly part: NamePart }
  | { readonly kind: "class"; readonly part: NamePart; readonly record: RecordSpecifier }
  | { readonly kind: "other"; readonly name: string }
  /** `isPartial`: of another class than the template's own parameters make. */
  | { readonly kind: "member"; readonly owner: string; readonly isPartial: boolean };

/** Keeps a template, to be read again for every set of arguments it is used with. */
export function declareTemplate(context: Context, syntax: TemplateSyntax): void {
  const templated = templatedBy(syntax.declaration);
  if (templated === undefined) {
    note(context, atOf(context, syntax), "a template of this form is not understood");
    return;
  }
  switch (templated.kind) {
    case "function":
      if (syntax.parameters.length === 0) specialiseFunction(context, templated.part, syntax.declaration);
      else
        overloadsIn(context.scope, templated.name)?.templates.push(entryOf(context, syntax, templated.name));
      return;
    case "class":
      declareClassTemplate(context, syntax, templated.part, templated.record);
      return;
    case "other":
      context.scope.names.set(templated.name, entryOf(context, syntax, templated.name));
      return;
    case "member": {
      const owner = lookup(context.scope, templated.owner);
      if (owner?.kind === "template" && templated.isPartial) {
        owner.isUnclear = true;
        note(context, atOf(context, syntax), "a member of a partial specialisation is not understood here");
      } else if (owner?.kind === "template") {
        addMemberDefinition(context, owner, entryOf(context, syntax, templated.owner));
      }
    }
  }
}

/** A specialisation that is not understood makes it unclear what its template is. */
export function markUnclear(context: Context, place: Place): void {
  const { tokens } = context.passage;
  if (tokens[place.first]?.text !== "template") return;
  for (let at = place.first; at < place.end; at += 1) {
    const text = tokens[at]?.text;
    if (text === "{" || text === ";") return;
    if (text !== "struct" && text !== "class" && text !== "union") continue;
    if (tokens[at + 2]?.text !== "<") continue;
    const primary = lookup(context.scope, tokens[at + 1]?.text ?? "");
    if (primary?.kind === "template") primary.isUnclear = true;
  }
}

function entryOf(context: Context, syntax: TemplateSyntax, name: string): TemplateEntry {
  return {
    kind: "template",
    name,
    parameters: syntax.parameters,
    declaration: syntax.declaration,
    passage: context.passage,
    scope: context.scope,
    instances: new Map(),
    memberDefinitions: [],
    partial: [],
    isUnclear: false,
  };
}

function declareClassTemplate(
  context: Context,
  syntax: TemplateSyntax,
  part: NamePart,
  record: RecordSpecifier,
): void {
  const earlier = context.scope.names.get(part.text);
  if (part.templateArguments !== undefined) {
    const primary = lookup(context.scope, part.text);
    if (syntax.parameters.length === 0 && primary?.kind === "template") {
      specialise(context, primary, part, record);
      return;
    }
    if (primary?.kind !== "template") {
      note(context, atOf(context, syntax), "a specialisation of no known template");
      return;
    }
    if (syntax.parameters.some(isPack)) primary.isUnclear = true;
    const entry = entryOf(context, syntax, part.text);
    primary.partial.push({ entry, pattern: part.templateArguments, record });
    return;
  }
  if (earlier?.kind === "template" && record.members === undefined) return;
  const entry = entryOf(context, syntax, part.text);
  if (syntax.parameters.some(isPack)) {
    entry.isUnclear = true;
    note(context, atOf(context, syntax), "a class template with a parameter pack is not understood");
  }
  context.scope.names.set(part.text, entry);
}

function templatedBy(declaration: Declaration): Templated | undefined {
  switch (declaration.kind) {
    case "function":
    case "special-function":
      return ofDeclarator(declaration.declarator);
    case "alias":
      return { kind: "other", name: declaration.name };
    case "simple": {
      const declarator = declaration.declarators[0]?.declarator;
      if (declarator !== undefined) return ofDeclarator(declarator);
      const { type } = declaration.specifiers;
      const part = type.kind === "record" ? type.record.name?.parts[0] : undefined;
      if (type.kind !== "record" || part === undefined) return undefined;
      return { kind: "class", part, record: type.record };
    }
    default:
      return undefined;
  }
}

function ofDeclarator(declarator: Declarator): Templated | undefined {
  const parts = declarator.name?.parts ?? [];
  const [first] = parts;
  if (first === undefined) return undefined;
  if (parts.length > 1) return { kind: "member", owner: first.text, isPartial: !isPlainList(first) };
  return functionPart(declarator) === undefined
    ? { kind: "other", name: first.text }
    : { kind: "function", name: first.text, part: first };
}

/** Whether arguments are just names, as in `C<T, N>::f`. */
function isPlainList({ templateArguments }: NamePart): boolean {
  return (templateArguments ?? []).every((argument) =>
    argument.kind === "value"
      ? argument.value.kind === "name"
      : argument.type.specifiers.type.kind === "named" &&
        argument.type.specifiers.type.name.parts.every((part) => part.templateArguments === undefined) &&
        !argument.type.specifiers.const &&
        argument.type.declarator.parts.length === 0,
  );
}
