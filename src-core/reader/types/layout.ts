import { hasOwnWidth, integerTypeOf } from "./conversions.ts";
import type { BaseSubobject, DataModel, Field, Type } from "./types.ts";

/** Bytes of an object of this type; undefined for functions, `void`, and what is incomplete or unknown. */
export function sizeOf(type: Type, model: DataModel): number | undefined {
  switch (type.kind) {
    case "integer":
      // What arithmetic on a wide bit-field gives in C is kept in the next larger integer.
      return hasOwnWidth(type) ? 2 ** Math.ceil(Math.log2(type.bits / 8)) : type.bits / 8;
    case "floating":
      return type.bits / 8;
    case "pointer":
      return model.pointer / 8;
    case "reference":
      return sizeOf(type.to, model);
    case "array": {
      const element = sizeOf(type.of, model);
      return element === undefined || type.length === undefined ? undefined : element * type.length;
    }
    case "record":
      return type.record.complete ? type.record.size : undefined;
    case "enumeration":
      return type.enumeration.underlying.bits / 8;
    case "void":
    case "function":
    case "unknown":
      return undefined;
  }
}

/** Alignment in bytes; 1 where nothing is known. */
export function alignmentOf(type: Type, model: DataModel): number {
  if (type.kind === "array") return alignmentOf(type.of, model);
  if (type.kind === "reference") return alignmentOf(type.to, model);
  if (type.kind === "record") return type.record.alignment;
  return Math.min(model.maxAlignment, sizeOf(type, model) ?? 1);
}

/** A member as declared. An unnamed bit-field takes room but is no field; width 0 ends a unit. */
export interface MemberDraft {
  readonly name: string | undefined;
  readonly type: Type;
  readonly bitWidth: number | undefined;
  /** `__attribute__((packed))` on the member itself. */
  readonly packed: boolean;
  readonly mutable: boolean;
}

export interface RecordDraft {
  readonly keyword: "struct" | "union" | "class";
  readonly language: "c" | "c++";
  readonly bases: readonly { readonly record: BaseSubobject["record"] }[];
  readonly members: readonly MemberDraft[];
  readonly packed: boolean;
  /** `aligned(n)`, bytes; 1 for none. */
  readonly aligned: number;
  /** It needs a table pointer of its own, no base having one. */
  readonly ownTable: boolean;
}

export interface RecordLayout {
  readonly fields: readonly Field[];
  readonly bases: readonly BaseSubobject[];
  readonly size: number;
  readonly alignment: number;
}

/** Where layout stands: the next free bit and the alignment so far. */
interface Progress {
  bits: number;
  /** The widest extent, for unions. */
  extent: number;
  alignment: number;
}

const roundUp = (value: number, to: number): number => Math.ceil(value / to) * to;

/**
 * Whether a bit-field at this bit would reach over more of its type's units than the type has. Such a one begins
 * a new unit on the 32-bit targets (Procedure Call Standard for the Arm Architecture, "Bit-fields"); avr-gcc lets
 * it cross bytes.
 */
function straddles(bit: number, width: number, typeBits: number, unit: number): boolean {
  return (bit % unit) + width > roundUp(typeBits, unit);
}

function placeBitField(
  member: MemberDraft,
  width: number,
  draft: RecordDraft,
  at: Progress,
  model: DataModel,
): number {
  const packed = draft.packed || member.packed;
  const alignment = alignmentOf(member.type, model);
  const typeBits = integerTypeOf(member.type)?.bits ?? 8;
  if (width === 0) {
    at.bits = roundUp(at.bits, alignment * 8);
    return at.bits;
  }
  const isUnitBound = model.maxAlignment > 1;
  if (isUnitBound && !packed && straddles(at.bits, width, typeBits, alignment * 8)) {
    at.bits = roundUp(at.bits, alignment * 8);
  }
  if (!packed && member.name !== undefined) at.alignment = Math.max(at.alignment, alignment);
  return at.bits;
}

function placeMember(member: MemberDraft, draft: RecordDraft, at: Progress, model: DataModel): number {
  const alignment = draft.packed || member.packed ? 1 : alignmentOf(heldType(member), model);
  at.alignment = Math.max(at.alignment, alignment);
  at.bits = roundUp(at.bits, alignment * 8);
  return at.bits;
}

function placeBases(draft: RecordDraft, at: Progress, model: DataModel): BaseSubobject[] {
  if (draft.ownTable) {
    at.bits = model.pointer;
    at.alignment = Math.min(model.maxAlignment, model.pointer / 8);
  }
  return draft.bases.map(({ record }) => {
    const isEmpty = record.fields.length === 0 && record.bases.length === 0 && !record.polymorphic;
    at.alignment = Math.max(at.alignment, record.alignment);
    at.bits = roundUp(at.bits, record.alignment * 8);
    const offset = at.bits / 8;
    if (!isEmpty) at.bits += record.size * 8;
    return { record, offset };
  });
}

/** What a member takes up: of a reference a pointer (Itanium C++ ABI 2.2), not what it refers to. */
function heldType({ type }: MemberDraft): Type {
  return type.kind === "reference" ? { kind: "pointer", to: type.to } : type;
}

/**
 * Places the members of a record: in order, each at its alignment, bit-fields from the least significant bit
 * up, as avr-gcc and the 32-bit targets do (C11 6.7.2.1 leaves it to them). In a union all start at 0.
 */
export function layoutRecord(draft: RecordDraft, model: DataModel): RecordLayout {
  const at: Progress = { bits: 0, extent: 0, alignment: draft.packed ? 1 : Math.max(1, draft.aligned) };
  const bases = placeBases(draft, at, model);
  const fields: Field[] = [];
  for (const member of draft.members) {
    if (draft.keyword === "union") at.bits = 0;
    const isBitField = member.bitWidth !== undefined;
    const bitOffset = isBitField
      ? placeBitField(member, member.bitWidth ?? 0, draft, at, model)
      : placeMember(member, draft, at, model);
    const width = member.bitWidth ?? (sizeOf(heldType(member), model) ?? 0) * 8;
    at.bits = bitOffset + width;
    at.extent = Math.max(at.extent, at.bits);
    if (member.name === undefined) continue;
    const { name, type, bitWidth, mutable } = member;
    fields.push({ name, type, bitWidth, bitOffset, ...(mutable ? { mutable } : {}) });
  }
  const alignment = Math.max(at.alignment, draft.aligned);
  const extent = Math.max(at.extent, at.bits);
  const size = roundUp(Math.ceil(extent / 8), alignment);
  return { fields, bases, size: size === 0 && draft.language === "c++" ? 1 : size, alignment };
}
