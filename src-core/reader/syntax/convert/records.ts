import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Access, BaseSpecifier, Name, Place, RecordSpecifier, TypeSpecifier } from "../nodes.ts";
import { declarationsOf } from "./declarations.ts";
import { nameOf } from "./names.ts";
import { childOf, childOfType, type Reading } from "./reading.ts";

const keywordOf = (text: string): RecordSpecifier["keyword"] =>
  text === "class" || text === "union" ? text : "struct";

/** A record with its body (C11 6.7.2.1, C++ [class]). */
export function recordOf(reading: Reading, node: RawNode): RecordSpecifier {
  const name = childOf(node, "name");
  const body = childOf(node, "body");
  const bases = childOfType(node, "base_class_clause");
  const members = body === undefined ? undefined : declarationsOf(reading, body.children);
  const bodyFirst = body?.first ?? node.end;
  return {
    first: node.first,
    end: node.end,
    keyword: keywordOf(reading.text(node.first)),
    name: name === undefined ? undefined : nameOf(reading, name),
    bases: bases === undefined ? [] : basesOf(reading, bases),
    members,
    attributes: [
      ...reading.takeAttributes(node.first, bodyFirst),
      ...reading.takeAttributes(node.end, reading.attributesFrom(node.end)),
    ],
  };
}

/** `struct s` or `enum e` without a body. */
export function referenceOf(keyword: string, place: Place, name: Name): TypeSpecifier {
  const { first, end } = place;
  if (keyword === "enum") {
    const nothing = { underlying: undefined, enumerators: undefined, attributes: [] };
    const enumeration = { first, end, scoped: false, name, ...nothing };
    return { first, end, kind: "enum", enumeration };
  }
  const record: RecordSpecifier = {
    first,
    end,
    keyword: keywordOf(keyword),
    name,
    bases: [],
    members: undefined,
    attributes: [],
  };
  return { first, end, kind: "record", record };
}

function basesOf(reading: Reading, clause: RawNode): readonly BaseSpecifier[] {
  const bases: BaseSpecifier[] = [];
  let access: Access | undefined;
  let virtual = false;
  let first: number | undefined;
  for (const child of clause.children) {
    switch (child.type) {
      case ":":
      case ",":
        break;
      case "access_specifier":
        access = accessOf(reading.text(child.first));
        first ??= child.first;
        break;
      case "virtual":
        virtual = true;
        first ??= child.first;
        break;
      default:
        bases.push({
          first: first ?? child.first,
          end: child.end,
          access,
          virtual,
          name: nameOf(reading, child),
        });
        access = undefined;
        virtual = false;
        first = undefined;
    }
  }
  return bases;
}

export const accessOf = (text: string): Access =>
  text === "public" || text === "protected" ? text : "private";
