import type { Designator, ListEntry } from "../syntax/nodes.ts";
import { sameUnqualified } from "../types/compare.ts";
import type { Field, Type } from "../types/types.ts";
import type { Context } from "./context.ts";
import { refer } from "./context.ts";
import { toBase } from "./convert.ts";
import { constantCount } from "./declarators.ts";
import { typeExpression } from "./expressions.ts";
import { fieldPath } from "./fields.ts";
import { initializerFrom, initializerFromTyped, isAggregate } from "./initializers.ts";
import type { AggregateEntry, At, TypedExpression, TypedInitializer } from "./nodes.ts";
import { expanded } from "./packs.ts";

type Target = AggregateEntry["target"];

/** The list being read; `typed` is the entry at `index`, typed ahead to decide where it belongs. */
interface Cursor {
  readonly entries: readonly ListEntry[];
  index: number;
  typed: TypedExpression | undefined;
}

/** An aggregate while its entries arrive. */
interface Builder {
  readonly type: Type;
  readonly at: At;
  readonly entries: AggregateEntry[];
}

/**
 * Matches a braced list to the members of an array or record (C11 6.7.9p17-p21): designators, inner braces,
 * and inner aggregates written without braces.
 */
export function readAggregate(
  context: Context,
  type: Type,
  written: readonly ListEntry[],
  at: At,
): TypedInitializer {
  const entries = expandedEntries(context, written);
  const [only] = entries;
  if (only !== undefined && entries.length === 1 && only.designators.length === 0) {
    if (only.value.kind === "string" && isCharacterArray(type)) {
      return initializerFromTyped(context, type, typeExpression(context, only.value));
    }
  }
  const cursor: Cursor = { entries, index: 0, typed: undefined };
  if (only !== undefined && isCopyOf(type, entries)) {
    // `T b{a}` is a copy (C++14 11.6.4p3.1, which C++11 was amended to say).
    cursor.typed = typeExpression(context, only.value, type);
    const isSame = sameUnqualified(type, cursor.typed.type) || toBase(cursor.typed, type) !== undefined;
    if (isSame) return initializerFromTyped(context, type, cursor.typed);
  }
  const builder: Builder = { type, at, entries: [] };
  fill(context, builder, cursor, "braces");
  return finish(builder);
}

function expandedEntries(context: Context, entries: readonly ListEntry[]): readonly ListEntry[] {
  return entries.flatMap((entry) =>
    entry.value.kind === "expansion"
      ? expanded(context, [entry.value]).map((value) => ({ ...entry, value }))
      : [entry],
  );
}

function finish(builder: Builder): TypedInitializer {
  const { type, at, entries } = builder;
  return { kind: "aggregate", at, type, entries };
}

/** Whether a list may be no list of members: one object of a class, its type to be seen. */
function isCopyOf(type: Type, [only, ...others]: readonly ListEntry[]): boolean {
  if (type.kind !== "record" || only === undefined || others.length > 0) return false;
  return only.designators.length === 0 && only.value.kind !== "list";
}

function isCharacterArray(type: Type): boolean {
  return type.kind === "array" && type.of.kind === "integer" && type.of.rank !== "bool";
}

/** Members by position: the fields of a record (the first alone of a union), the elements of an array. */
function targetAt(type: Type, position: number): Target | undefined {
  if (type.kind === "array") {
    if (type.length !== undefined && position >= type.length) return undefined;
    return { index: position, upTo: position };
  }
  if (type.kind !== "record") return undefined;
  if (type.record.keyword === "union" && position > 0) return undefined;
  return type.record.fields[position];
}

function typeOfTarget(type: Type, target: Target): Type {
  if ("bitOffset" in target) return target.type;
  return type.kind === "array" ? type.of : { kind: "unknown", name: "" };
}

function fill(context: Context, builder: Builder, cursor: Cursor, form: "braces" | "elided"): void {
  let position = 0;
  while (cursor.index < cursor.entries.length) {
    const entry = cursor.entries[cursor.index];
    if (entry === undefined) return;
    const [designator] = entry.designators;
    if (designator !== undefined) {
      if (form === "elided") return;
      cursor.index += 1;
      cursor.typed = undefined;
      position = designated(context, builder, entry, position) + 1;
      continue;
    }
    const target = targetAt(builder.type, position);
    if (target === undefined) {
      if (form === "elided") return;
      cursor.index += 1;
      cursor.typed = undefined;
      continue;
    }
    builder.entries.push({ target, initializer: nextInitializer(context, builder, cursor, entry, target) });
    position += 1;
  }
}

/** Reads what goes into one member; at least one entry is used up. */
function nextInitializer(
  context: Context,
  builder: Builder,
  cursor: Cursor,
  entry: ListEntry,
  target: Target,
): TypedInitializer {
  const type = typeOfTarget(builder.type, target);
  if (entry.value.kind === "list") {
    cursor.index += 1;
    cursor.typed = undefined;
    return initializerFrom(context, type, entry.value);
  }
  cursor.typed ??= typeExpression(context, entry.value, type);
  const { typed } = cursor;
  if (isAggregate(context, type) && !fillsWhole(type, typed)) {
    const inner: Builder = { type, at: typed.at, entries: [] };
    const before = cursor.index;
    fill(context, inner, cursor, "elided");
    if (cursor.index > before) return finish(inner);
  }
  cursor.index += 1;
  cursor.typed = undefined;
  return initializerFromTyped(context, type, typed);
}

function fillsWhole(type: Type, value: TypedExpression): boolean {
  if (value.kind === "string") return isCharacterArray(type);
  return value.type.kind === "unknown" || sameUnqualified(type, value.type);
}

/** Puts a designated entry into its place, however deep; gives the position it took. */
function designated(context: Context, builder: Builder, entry: ListEntry, position: number): number {
  const [first, ...rest] = entry.designators;
  if (first === undefined) return position;
  const path = targetsOf(context, builder.type, first);
  const target = path[0];
  if (target === undefined) {
    typeExpression(context, entry.value);
    return position;
  }
  place(context, builder, [...path], rest, entry);
  if ("bitOffset" in target) {
    return builder.type.kind === "record" ? builder.type.record.fields.indexOf(target) : position;
  }
  return target.upTo;
}

function place(
  context: Context,
  builder: Builder,
  path: readonly Target[],
  rest: readonly Designator[],
  entry: ListEntry,
): void {
  const [target, ...deeper] = path;
  if (target === undefined) return;
  const type = typeOfTarget(builder.type, target);
  const [next, ...afterNext] = rest;
  if (deeper.length === 0 && next === undefined) {
    builder.entries.push({ target, initializer: initializerFrom(context, type, entry.value) });
    return;
  }
  const inner = innerBuilder(builder, target, type);
  if (deeper.length > 0) place(context, inner, deeper, rest, entry);
  else if (next !== undefined) place(context, inner, targetsOf(context, type, next), afterNext, entry);
}

/** The aggregate already begun for this member, or a new one. */
function innerBuilder(builder: Builder, target: Target, type: Type): Builder {
  const begun = builder.entries.find((entry) => sameTarget(entry.target, target))?.initializer;
  if (begun?.kind === "aggregate") {
    const entries = [...begun.entries];
    const inner: Builder = { type, at: begun.at, entries };
    replace(builder, target, finish(inner));
    return inner;
  }
  const inner: Builder = { type, at: builder.at, entries: [] };
  builder.entries.push({ target, initializer: finish(inner) });
  return inner;
}

function replace(builder: Builder, target: Target, initializer: TypedInitializer): void {
  const index = builder.entries.findIndex((entry) => sameTarget(entry.target, target));
  if (index >= 0) builder.entries[index] = { target, initializer };
}

function sameTarget(a: Target, b: Target): boolean {
  if ("bitOffset" in a || "bitOffset" in b) return a === b;
  return a.index === b.index && a.upTo === b.upTo;
}

/** The member a designator names; through unnamed inner records more than one step. */
function targetsOf(context: Context, type: Type, designator: Designator): readonly Target[] {
  if (designator.kind === "index") {
    const index = constantCount(context, designator.index);
    const upTo = designator.upTo === undefined ? index : constantCount(context, designator.upTo);
    if (type.kind !== "array" || index === undefined || upTo === undefined) return [];
    return [{ index, upTo: Math.max(index, upTo) }];
  }
  if (type.kind !== "record") return [];
  const path: readonly Field[] = fieldPath(type.record, designator.name) ?? [];
  const named = path[path.length - 1];
  if (named !== undefined) refer(context, { first: designator.end - 1, end: designator.end }, named);
  return path;
}
