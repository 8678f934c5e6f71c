import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Specifiers, TypeName, TypeSpecifier } from "../nodes.ts";
import type { SpecifierRecord } from "../outline/presentation.ts";
import { declaratorOf } from "./declarators.ts";
import { enumOf } from "./enumerations.ts";
import { expressionOf } from "./expressions.ts";
import { nameOf, simpleName } from "./names.ts";
import { childOf, type Reading } from "./reading.ts";
import { recordOf, referenceOf } from "./records.ts";

/** A type in a cast, `sizeof`, template argument or trailing return. */
export function typeNameOf(reading: Reading, node: RawNode): TypeName {
  const type = childOf(node, "type");
  const declarator = childOf(node, "declarator");
  const end = declarator?.first ?? node.end;
  const specifiers = specifiersOf(reading, { first: node.first, end }, type);
  return {
    first: specifiers.first,
    end: Math.max(node.end, specifiers.end),
    specifiers,
    declarator: declaratorOf(reading, declarator, specifiers.end),
  };
}

/** A type that is one token or name, as in `T(x)`. */
export function plainTypeName(reading: Reading, node: RawNode): TypeName {
  const specifiers = specifiersOf(reading, node, node);
  const { first, end } = specifiers;
  return { first, end, specifiers, declarator: declaratorOf(reading, undefined, end) };
}

interface Range {
  readonly first: number;
  readonly end: number;
}

/**
 * The specifiers of the declaration whose specifier part the grammar sees as `range`; `type` is the grammar's
 * node of their type, undefined where none is written.
 */
export function specifiersOf(reading: Reading, range: Range, type: RawNode | undefined): Specifiers {
  const record = reading.specifiers(type?.first ?? range.first) ?? unrecorded(range, type);
  return specifiersFrom(reading, record, range, type);
}

/** Specifiers that the grammar was not shown. */
export function recordedSpecifiers(reading: Reading, record: SpecifierRecord): Specifiers {
  return specifiersFrom(reading, record, record, undefined);
}

function specifiersFrom(
  reading: Reading,
  record: SpecifierRecord,
  range: Range,
  type: RawNode | undefined,
): Specifiers {
  const specifier = typeSpecifier(reading, record, type);
  const first = reading.attributesBefore(record.first);
  const end = Math.max(record.end, record.first);
  const attributes = reading.takeAttributes(first, Math.max(reading.attributesFrom(end), range.end));
  return {
    first: record.first,
    end,
    storage: record.storage,
    const: record.const,
    volatile: record.volatile,
    type: specifier,
    attributes,
  };
}

/** The grammar found a declaration where the outline saw none. */
function unrecorded(range: Range, type: RawNode | undefined): SpecifierRecord {
  const first = type?.first ?? range.first;
  const end = type?.end ?? range.first;
  return {
    first,
    end,
    storage: [],
    const: false,
    volatile: false,
    type: type === undefined ? { kind: "none" } : { kind: "named" },
    typeFirst: first,
    typeEnd: end,
  };
}

function typeSpecifier(reading: Reading, record: SpecifierRecord, node: RawNode | undefined): TypeSpecifier {
  const place = { first: record.typeFirst, end: record.typeEnd };
  const { type } = record;
  switch (type.kind) {
    case "words":
      return { ...place, kind: "words", words: type.words };
    case "auto":
      return { ...place, kind: "auto" };
    case "none":
      return { ...place, kind: "none" };
    case "reference": {
      const name = node === undefined ? simpleName(reading, place.first) : nameOf(reading, node);
      return referenceOf(type.keyword, { ...place, first: record.typeFirst }, name);
    }
    case "typeof": {
      const inner = node?.children.find((child) => child.type !== "decltype" && child.type !== "(");
      if (inner === undefined) return { ...place, kind: "none" };
      return { ...place, kind: "typeof", expression: expressionOf(reading, inner) };
    }
    case "body":
      if (node?.type === "enum_specifier") {
        return { ...place, kind: "enum", enumeration: enumOf(reading, node) };
      }
      if (node === undefined) return { ...place, kind: "none" };
      return { ...place, kind: "record", record: recordOf(reading, node) };
    case "named":
      return {
        ...place,
        kind: "named",
        name: node === undefined ? simpleName(reading, place.first) : nameOf(reading, node),
      };
  }
}
