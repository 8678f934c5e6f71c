import type { Attribute, Declaration, RecordSpecifier } from "../syntax/nodes.ts";
import { layoutRecord, type MemberDraft } from "../types/layout.ts";
import type { RecordDeclaration, Type } from "../types/types.ts";
import { declareMember, type MemberList } from "./class-members.ts";
import { atOf, type ClassState, type Context, inScope, refer } from "./context.ts";
import { declareTag } from "./enumerations.ts";
import { resolve, resolveType, scopeOfQualifiers } from "./names.ts";
import type { TypeSymbol } from "./nodes.ts";
import { lookupTag, makeScope } from "./scope.ts";

const noRecord = (keyword: RecordDeclaration["keyword"], name: string): RecordDeclaration => ({
  keyword,
  name,
  complete: false,
  fields: [],
  bases: [],
  polymorphic: false,
  size: 0,
  alignment: 1,
});

/** The type that `struct`, `union` or `class` names or defines (C11 6.7.2.1, 6.7.2.3). */
export function recordOf(context: Context, syntax: RecordSpecifier, hint: string): Type {
  const symbol = syntax.members === undefined ? namedRecord(context, syntax) : undefined;
  if (symbol !== undefined) {
    const part = syntax.name?.parts[syntax.name.parts.length - 1];
    if (part !== undefined) refer(context, part, symbol);
    return symbol.type;
  }
  const { type, record } = declareRecord(context, syntax, hint);
  if (syntax.members !== undefined) defineRecord(context, syntax, syntax.members, record);
  return type;
}

function namedRecord(context: Context, syntax: RecordSpecifier): TypeSymbol | undefined {
  if (syntax.name === undefined) return undefined;
  const only = syntax.name.parts.length === 1 ? syntax.name.parts[0] : undefined;
  if (only !== undefined) return lookupTag(context.scope, only.text);
  const entry = resolve(context, syntax.name);
  return entry?.kind === "type" ? entry : undefined;
}

interface Declared {
  readonly type: Type;
  readonly record: RecordDeclaration;
}

function declareRecord(context: Context, syntax: RecordSpecifier, hint: string): Declared {
  const part = syntax.name?.parts[syntax.name.parts.length - 1];
  const scope = (syntax.name && scopeOfQualifiers(context, syntax.name)) ?? context.scope;
  const earlier = part === undefined ? undefined : scope.tags.get(part.text);
  if (part !== undefined && earlier?.type.kind === "record") {
    refer(context, part, earlier);
    if (syntax.members === undefined || !earlier.type.record.complete) {
      return { type: earlier.type, record: earlier.type.record };
    }
  }
  const ownName = part?.text ?? hint;
  const record = noRecord(syntax.keyword, ownName === "" ? "" : `${scope.prefix}${ownName}`);
  const type: Type = { kind: "record", record };
  if (part !== undefined) {
    declareTag(context, { kind: "type", name: part.text, type, at: atOf(context, part) }, scope);
  }
  return { type, record };
}

/** Reads the body of a class: members first, then the layout; bodies of functions wait until asked for. */
export function defineRecord(
  context: Context,
  syntax: RecordSpecifier,
  members: readonly Declaration[],
  record: RecordDeclaration,
): void {
  const { unit } = context;
  const scope = makeScope("record", context.scope, record.name === "" ? "" : `${record.name}::`, record);
  const ownName = syntax.name?.parts[syntax.name.parts.length - 1]?.text ?? "";
  const state: ClassState = { record, ownName, scope, functions: [], fieldInitializers: new Map() };
  unit.classes.set(record, state);
  const bases = baseRecords(context, syntax);
  for (const base of bases) {
    const baseScope = unit.classes.get(base)?.scope;
    if (baseScope !== undefined) scope.bases.push(baseScope);
  }
  const inside = inScope(context, scope);
  const list: MemberList = { state, drafts: [] };
  for (const member of members) declareMember(inside, member, list);
  const inheritsTable = bases.some((base) => base.polymorphic);
  const isPolymorphic = inheritsTable || state.functions.some((method) => method.isVirtual);
  completeRecord(context, syntax, record, list.drafts, bases, isPolymorphic && !inheritsTable);
  record.polymorphic = isPolymorphic;
  recordPlaces(context, record, list);
}

/** Only a class whose body is read can be a base (C++11 10p2), so that no class comes from itself. */
function baseRecords(context: Context, syntax: RecordSpecifier): RecordDeclaration[] {
  return syntax.bases.flatMap((base) => {
    const type = resolveType(context, base.name);
    return type.kind === "record" && type.record.complete ? [type.record] : [];
  });
}

function completeRecord(
  context: Context,
  syntax: RecordSpecifier,
  record: RecordDeclaration,
  drafts: readonly MemberDraft[],
  bases: readonly RecordDeclaration[],
  ownTable: boolean,
): void {
  const layout = layoutRecord(
    {
      keyword: syntax.keyword,
      language: context.unit.language,
      bases: bases.map((base) => ({ record: base })),
      members: drafts,
      packed: isPacked(syntax.attributes),
      aligned: alignedTo(syntax.attributes),
      ownTable,
    },
    context.unit.model,
  );
  record.fields = layout.fields;
  record.bases = layout.bases;
  record.size = layout.size;
  record.alignment = layout.alignment;
  record.complete = true;
}

const plainName = (attribute: Attribute): string => attribute.name.replace(/^__(.*)__$/, "$1");

export function isPacked(attributes: readonly Attribute[]): boolean {
  return attributes.some((attribute) => plainName(attribute) === "packed");
}

/** Bytes of `aligned(n)`; 1 for none. */
function alignedTo(attributes: readonly Attribute[]): number {
  const aligned = attributes.find((attribute) => plainName(attribute) === "aligned");
  const bytes = Number(aligned?.arguments[0] ?? "1");
  return Number.isInteger(bytes) && bytes > 0 ? bytes : 1;
}

/** Fields exist once the layout is made; where they were declared was noted on the way. */
function recordPlaces(context: Context, record: RecordDeclaration, list: MemberList): void {
  const named = list.drafts.filter((draft) => draft.name !== undefined);
  for (const [index, field] of record.fields.entries()) {
    const at = named[index]?.at;
    if (at === undefined) continue;
    context.unit.fieldPlaces.set(field, at);
    context.passage.references.push({ token: at.first, target: field });
  }
}
