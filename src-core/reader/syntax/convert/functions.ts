import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Block, Declaration, MemberInitializer } from "../nodes.ts";
import { argumentsOf } from "./calls.ts";
import { notUnderstoodDeclaration } from "./declarations.ts";
import { declaratorOf } from "./declarators.ts";
import { nameOf } from "./names.ts";
import { childOf, childOfType, type Reading } from "./reading.ts";
import { blockOf } from "./statements.ts";
import { specifiersOf } from "./types.ts";

/** A function with its body, or `= default` and its kin. */
export function functionOf(reading: Reading, node: RawNode): Declaration {
  const declaratorNode = childOf(node, "declarator");
  if (declaratorNode === undefined) return notUnderstoodDeclaration(reading, node.first, node.end);
  const type = childOf(node, "type");
  const range = { first: type === undefined ? declaratorNode.first : node.first, end: declaratorNode.first };
  const specifiers = specifiersOf(reading, range, type);
  const declarator = declaratorOf(reading, declaratorNode, specifiers.end);
  const place = { first: Math.min(specifiers.first, node.first), end: node.end };
  const special = specialOf(node);
  if (special !== undefined) return { ...place, kind: "special-function", specifiers, declarator, special };
  const body = childOf(node, "body");
  if (body?.type !== "compound_statement") return notUnderstoodDeclaration(reading, place.first, place.end);
  const list = childOfType(node, "field_initializer_list");
  return {
    ...place,
    kind: "function",
    specifiers,
    declarator,
    memberInitializers: list === undefined ? [] : memberInitializers(reading, list),
    body: blockOf(reading, body),
  };
}

function specialOf(node: RawNode): "default" | "delete" | "pure" | undefined {
  if (childOfType(node, "default_method_clause") !== undefined) return "default";
  if (childOfType(node, "delete_method_clause") !== undefined) return "delete";
  return childOfType(node, "pure_virtual_clause") === undefined ? undefined : "pure";
}

function memberInitializers(reading: Reading, list: RawNode): readonly MemberInitializer[] {
  const found: MemberInitializer[] = [];
  for (const child of list.children) {
    const name = child.type === "field_initializer" ? child.children[0] : undefined;
    if (name === undefined) continue;
    const args = child.children[1];
    found.push({
      first: child.first,
      end: child.end,
      name: nameOf(reading, name),
      arguments: args === undefined ? [] : argumentsOf(reading, args),
    });
  }
  return found;
}

/** A block that stands for one that was not understood. */
export function emptyBlock(first: number, end: number): Block {
  return { kind: "block", first, end, statements: [] };
}
