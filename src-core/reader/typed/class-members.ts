import type { Declaration, InitDeclarator, Specifiers } from "../syntax/nodes.ts";
import type { MemberDraft } from "../types/layout.ts";
import type { RecordDeclaration, Type } from "../types/types.ts";
import { atOf, type ClassState, type Context, inScope } from "./context.ts";
import { declare } from "./declarations.ts";
import { constantCount, declaredType, functionPart } from "./declarators.ts";
import { declareBodyless, declareFunction, defineFunction } from "./functions.ts";
import { typedInitializer } from "./initializers.ts";
import type { At } from "./nodes.ts";
import { isPacked } from "./records.ts";
import { enclosingRegion } from "./scope.ts";
import { typeOfSpecifiers } from "./specifiers.ts";
import { declareTemplate } from "./template-declarations.ts";
import { declareVariable } from "./variables.ts";

export interface PlacedMember extends MemberDraft {
  readonly at: At;
}

/** What reading a class body gathers. */
export interface MemberList {
  readonly state: ClassState;
  readonly drafts: PlacedMember[];
}

/** Declares one member; `context.scope` is the class's. */
export function declareMember(context: Context, member: Declaration, list: MemberList): void {
  if (isFriend(member)) {
    declareFriend(context, member);
    return;
  }
  switch (member.kind) {
    case "simple":
      declareSimpleMember(context, member, list);
      return;
    case "function":
      defineFunction(context, member);
      return;
    case "special-function":
      declareBodyless(context, member);
      return;
    case "template":
      declareTemplate(context, member);
      return;
    case "alias":
    case "using":
    case "static-assert":
    case "not-understood":
      declare(context, member);
      return;
    case "namespace":
    case "linkage":
    case "access":
    case "assembly":
    case "empty":
      return;
  }
}

function isFriend(member: Declaration): boolean {
  switch (member.kind) {
    case "simple":
    case "function":
    case "special-function":
      return member.specifiers.storage.includes("friend");
    default:
      return false;
  }
}

/** A friend is no member: a function belongs to the namespace around the class (C++11 11.3p6). */
function declareFriend(context: Context, member: Declaration): void {
  const { parent } = context.scope;
  if (parent === undefined) return;
  const around = inScope(context, enclosingRegion(parent));
  if (member.kind === "function") {
    defineFunction(around, member, context.scope);
    return;
  }
  const isClass = member.kind === "simple" && member.declarators.length === 0;
  if (!isClass) declare(around, member);
}

function declareSimpleMember(
  context: Context,
  member: Extract<Declaration, { kind: "simple" }>,
  list: MemberList,
): void {
  const { specifiers } = member;
  const hint = member.declarators[0]?.declarator.name?.parts[0]?.text ?? "";
  const base = typeOfSpecifiers(context, specifiers, specifiers.storage.includes("typedef") ? hint : "");
  if (member.declarators.length === 0) {
    if (isAnonymous(specifiers)) {
      list.drafts.push({
        name: "",
        type: base,
        bitWidth: undefined,
        packed: false,
        mutable: false,
        at: atOf(context, member),
      });
      if (base.kind === "record") nameInner(context, base.record, list.state.record);
    }
    return;
  }
  for (const init of member.declarators) declareDeclarator(context, member, base, init, list);
}

/** Members of an unnamed record are named like those of the record around it (C++11 9.5p5). */
function nameInner(context: Context, inner: RecordDeclaration, record: RecordDeclaration): void {
  for (const { name, type } of inner.fields) {
    if (name !== "") context.scope.names.set(name, { kind: "field", name, record });
    else if (type.kind === "record") nameInner(context, type.record, record);
  }
}

/** `struct { ... };` without a name for type or member: its fields count as the outer record's (6.7.2.1p13). */
function isAnonymous(specifiers: Specifiers): boolean {
  const { type } = specifiers;
  return type.kind === "record" && type.record.name === undefined && type.record.members !== undefined;
}

/** A member of a type not complete yet, such as the class itself, has no known type (C11 6.7.2.1p3). */
function completeType(type: Type): Type {
  if (type.kind === "array") {
    const of = completeType(type.of);
    return of === type.of ? type : of;
  }
  if (type.kind !== "record" || type.record.complete) return type;
  return { kind: "unknown", name: type.record.name };
}

function declareDeclarator(
  context: Context,
  member: Extract<Declaration, { kind: "simple" }>,
  base: Type,
  init: InitDeclarator,
  list: MemberList,
): void {
  const { specifiers } = member;
  const { declarator } = init;
  if (specifiers.storage.includes("typedef") || specifiers.storage.includes("static")) {
    if (functionPart(declarator) === undefined || specifiers.storage.includes("typedef")) {
      declareVariable(context, member, base, init);
      return;
    }
  }
  if (functionPart(declarator) !== undefined) {
    declareFunction(context, specifiers, declarator, member);
    return;
  }
  const part = declarator.name?.parts[0];
  const type = completeType(declaredType(context, base, declarator));
  const draft: PlacedMember = {
    name: part?.text,
    type,
    bitWidth: init.bitWidth === undefined ? undefined : (constantCount(context, init.bitWidth) ?? 0),
    packed: isPacked(declarator.attributes) || isPacked(specifiers.attributes),
    mutable: specifiers.storage.includes("mutable"),
    at: atOf(context, part ?? init),
  };
  list.drafts.push(draft);
  if (part === undefined) return;
  const { record } = list.state;
  context.scope.names.set(part.text, { kind: "field", name: part.text, record });
  const { initializer } = init;
  if (initializer !== undefined) {
    list.state.fieldInitializers.set(part.text, () => typedInitializer(context, type, initializer));
  }
}
