import type { Expression, Place } from "../syntax/nodes.ts";
import { qualifiersOf, qualify, referred } from "../types/derive.ts";
import type { Field, Type } from "../types/types.ts";
import { arrowTarget } from "./class-operators.ts";
import { type Context, refer } from "./context.ts";
import { typeExpression } from "./expressions.ts";
import { type FoundField, findField } from "./fields.ts";
import { categoryOfPart, convertNode, decayed, unresolved, writtenName } from "./make.ts";
import { asNamedBase, functionNode, variableNode } from "./name-expressions.ts";
import { scopeOfQualifiers } from "./names.ts";
import type { At, TypedExpression } from "./nodes.ts";
import { type Entry, lookupHere } from "./scope.ts";
import { dereference } from "./unary-operators.ts";

type MemberSyntax = Extract<Expression, { kind: "member" }>;

/** The object before `.`, or what the pointer before `->` points to. */
export function memberObject(context: Context, syntax: MemberSyntax): TypedExpression {
  const object = typeExpression(context, syntax.object);
  if (!syntax.arrow) return object;
  if (object.type.kind === "record") return arrowTarget(context, object);
  return dereference(decayed(object), object.at);
}

/** What the name after `.` or `->` means in the object's class, functions and static members included. */
export function memberEntry(
  context: Context,
  object: TypedExpression,
  syntax: MemberSyntax,
): Entry | undefined {
  const last = syntax.member.parts[syntax.member.parts.length - 1];
  if (object.type.kind !== "record" || last === undefined) return undefined;
  // `d.Base::f` is looked for in the class that is named (C++11 3.4.5p4).
  const named = syntax.member.parts.length > 1 ? scopeOfQualifiers(context, syntax.member) : undefined;
  const scope = named ?? context.unit.classes.get(object.type.record)?.scope;
  return scope && lookupHere(scope, last.text);
}

export function typeMember(context: Context, syntax: MemberSyntax, at: At): TypedExpression {
  return memberOf(context, memberObject(context, syntax), syntax, at);
}

/** The member that the name after `.` or `->` means, of an object already typed. */
export function memberOf(
  context: Context,
  object: TypedExpression,
  syntax: MemberSyntax,
  at: At,
): TypedExpression {
  const last = syntax.member.parts[syntax.member.parts.length - 1];
  const name = last?.text ?? "";
  if (object.type.kind === "record" && last !== undefined) {
    const holder = asNamedBase(context, object, syntax.member);
    const found = holder.type.kind === "record" ? findField(holder.type.record, name) : undefined;
    if (found !== undefined) return fieldAccess(context, holder, found, last, at);
    const entry = memberEntry(context, object, syntax);
    if (entry?.kind === "variable") {
      refer(context, last, entry);
      return variableNode(entry, at);
    }
    if (entry?.kind === "enumerator") {
      refer(context, last, entry);
      return { kind: "enumerator", at, type: entry.type, lvalue: false, enumerator: entry };
    }
    const method = entry?.kind === "overloads" ? entry.functions[0] : undefined;
    if (method !== undefined) {
      refer(context, last, method);
      return functionNode(method, at);
    }
  }
  return unknownMember(object, name, at);
}

/** `a.b` where nothing is known of `b`. */
export function unknownMember(object: TypedExpression, name: string, at: At): TypedExpression {
  const written = writtenName(object);
  const whole = written === "" ? name : `${written}.${name}`;
  return unresolved(at, whole, "name", [object], `\`${name}\` is no known member`);
}

/** What an object's qualifiers make of a field; `mutable` ones are never const (C++11 7.1.1p9). */
function partQualifiers(object: Type, field: Field): ReturnType<typeof qualifiersOf> {
  const { const: isConst, volatile } = qualifiersOf(object);
  return { const: isConst && field.mutable !== true, volatile };
}

/** The field of an object, through base classes and unnamed inner records. */
export function fieldAccess(
  context: Context,
  object: TypedExpression,
  found: FoundField,
  place: Place,
  at: At,
): TypedExpression {
  let holder = object;
  for (const record of found.bases) {
    const type = qualify({ kind: "record", record }, qualifiersOf(holder.type));
    holder = { ...convertNode(holder, type, "base"), ...categoryOfPart(holder) };
  }
  for (const field of found.path) {
    const isReference = field.type.kind === "reference";
    const type = isReference ? referred(field.type) : qualify(field.type, partQualifiers(holder.type, field));
    const category = isReference ? { lvalue: true } : categoryOfPart(holder);
    holder = { kind: "member", at, type, ...category, object: holder, field };
  }
  const named = found.path[found.path.length - 1];
  if (named !== undefined) refer(context, place, named);
  return holder;
}
