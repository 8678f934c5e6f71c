import type { MemberInitializer } from "../syntax/nodes.ts";
import type { Field, RecordDeclaration, Type } from "../types/types.ts";
import { readAggregate } from "./aggregates.ts";
import { atOf, type Context, refer } from "./context.ts";
import { typeExpression } from "./expressions.ts";
import { fieldPath } from "./fields.ts";
import { initializerOf, isAggregate } from "./initializers.ts";
import { unknownType } from "./make.ts";
import { resolveType } from "./names.ts";
import type { At, TypedInitializer, TypedMemberInitializer } from "./nodes.ts";
import { expanded } from "./packs.ts";

/** `: a(1), Base(x)` of a constructor, matched to fields and bases. */
export function constructorInitializers(
  context: Context,
  record: RecordDeclaration,
  syntax: readonly MemberInitializer[],
): TypedMemberInitializer[] {
  const found: TypedMemberInitializer[] = [];
  for (const entry of syntax) {
    const at = atOf(context, entry);
    const target = memberTarget(context, record, entry);
    const initializer = initializerFor(context, typeOfTarget(target), entry, at);
    if (isPath(target)) add(found, target, initializer);
    else found.push({ at, target, initializer });
  }
  return found;
}

function initializerFor(context: Context, type: Type, entry: MemberInitializer, at: At): TypedInitializer {
  // Several values for what has no constructor can only be in braces.
  if (entry.arguments.length > 0 && isAggregate(context, type)) {
    const entries = entry.arguments.map((value) => ({
      designators: [],
      value,
      first: value.first,
      end: value.end,
    }));
    return readAggregate(context, type, entries, at);
  }
  const given = expanded(context, entry.arguments).map((argument) => typeExpression(context, argument));
  return (
    initializerOf(context, type, given, at) ?? {
      kind: "constructor",
      at,
      constructor: undefined,
      arguments: given,
    }
  );
}

type Target = readonly [Field, ...Field[]] | RecordDeclaration | undefined;

function isPath(target: Target): target is readonly [Field, ...Field[]] {
  return Array.isArray(target);
}

function typeOfTarget(target: Target): Type {
  if (target === undefined) return unknownType;
  return isPath(target) ? (target.at(-1)?.type ?? unknownType) : { kind: "record", record: target };
}

/** Members of unnamed records are entries of these (C++11 12.6.2p2). */
function add(
  found: TypedMemberInitializer[],
  [target, ...rest]: readonly [Field, ...Field[]],
  initializer: TypedInitializer,
): void {
  const { at } = initializer;
  const earlier = found.findIndex((entry) => entry.target === target);
  const begun = found[earlier]?.initializer;
  const whole = rest.length === 0 ? initializer : within(target.type, rest, initializer, begun);
  if (earlier >= 0) found[earlier] = { at, target, initializer: whole };
  else found.push({ at, target, initializer: whole });
}

/** A list for an unnamed record that has one entry more than the one begun. */
function within(
  type: Type,
  [target, ...rest]: readonly Field[],
  initializer: TypedInitializer,
  begun: TypedInitializer | undefined,
): TypedInitializer {
  const { at } = initializer;
  const entries = begun?.kind === "aggregate" ? begun.entries : [];
  if (target === undefined) return initializer;
  const same = entries.find((entry) => entry.target === target)?.initializer;
  const inner = rest.length === 0 ? initializer : within(target.type, rest, initializer, same);
  const others = entries.filter((entry) => entry.target !== target);
  return { kind: "aggregate", at, type, entries: [...others, { target, initializer: inner }] };
}

function memberTarget(context: Context, record: RecordDeclaration, entry: MemberInitializer): Target {
  const [only] = entry.name.parts;
  const path = only && entry.name.parts.length === 1 ? fieldPath(record, only.text) : undefined;
  const [first, ...rest] = path ?? [];
  if (first !== undefined) {
    refer(context, entry.name, rest.at(-1) ?? first);
    return [first, ...rest];
  }
  const type = resolveType(context, entry.name);
  return type.kind === "record" ? type.record : undefined;
}
