import type { RawNode } from "../grammar/raw-nodes.ts";
import type { EnumeratorSyntax, EnumSpecifier } from "../nodes.ts";
import { expressionOf } from "./expressions.ts";
import { nameOf } from "./names.ts";
import { childOf, childOfType, type Reading } from "./reading.ts";
import { plainTypeName } from "./types.ts";

/** An enumeration with its body (C11 6.7.2.2, C++ [dcl.enum]). */
export function enumOf(reading: Reading, node: RawNode): EnumSpecifier {
  const name = childOf(node, "name");
  const base = childOf(node, "base");
  const list = childOfType(node, "enumerator_list");
  const second = reading.text(node.first + 1);
  return {
    first: node.first,
    end: node.end,
    scoped: second === "class" || second === "struct",
    name: name === undefined ? undefined : nameOf(reading, name),
    underlying: base === undefined ? undefined : plainTypeName(reading, base),
    enumerators: list === undefined ? undefined : enumeratorsOf(reading, list),
    attributes: [
      ...reading.takeAttributes(node.first, list?.first ?? node.end),
      ...reading.takeAttributes(node.end, reading.attributesFrom(node.end)),
    ],
  };
}

function enumeratorsOf(reading: Reading, list: RawNode): readonly EnumeratorSyntax[] {
  const found: EnumeratorSyntax[] = [];
  for (const child of list.children) {
    if (child.type === "ERROR") {
      reading.note(child.first, child.end, "This part of an enumeration is not understood.");
    }
    if (child.type !== "enumerator") continue;
    const value = childOf(child, "value");
    found.push({
      first: child.first,
      end: child.end,
      name: reading.text(child.first),
      value: value === undefined ? undefined : expressionOf(reading, value),
    });
  }
  return found;
}
