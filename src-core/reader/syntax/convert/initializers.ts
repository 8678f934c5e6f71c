import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Designator, Expression, Initializer, ListEntry } from "../nodes.ts";
import { argumentsOf } from "./calls.ts";
import { expressionOf } from "./expressions.ts";
import { childOf, type Reading } from "./reading.ts";

/** `= e`, `= {...}`, `(a, b)` or `{a, b}` behind a declarator; `node` is the grammar's value. */
export function initializerOf(reading: Reading, node: RawNode): Initializer {
  const { first, end } = node;
  // Arguments in parentheses are shown to the grammar in braces.
  const isConstruct = node.type === "initializer_list" && reading.text(first - 1) !== "=";
  if (isConstruct || node.type === "argument_list") {
    const braces = reading.text(first) === "{";
    return { kind: "construct", first, end, braces, arguments: argumentsOf(reading, node) };
  }
  return { kind: "value", first, end, value: expressionOf(reading, node) };
}

/** `{1, .x = 2, [3] = 4}` (C11 6.7.9). */
export function listOf(reading: Reading, node: RawNode): Expression {
  const entries: ListEntry[] = [];
  for (const child of node.children) {
    if (child.type === "{" || child.type === "}" || child.type === ",") continue;
    entries.push(child.type === "initializer_pair" ? pairOf(reading, child) : plainEntry(reading, child));
  }
  return { kind: "list", first: node.first, end: node.end, entries };
}

function plainEntry(reading: Reading, node: RawNode): ListEntry {
  return { first: node.first, end: node.end, designators: [], value: expressionOf(reading, node) };
}

function pairOf(reading: Reading, node: RawNode): ListEntry {
  const designators: Designator[] = [];
  for (const child of node.children) {
    if (child.field === "designator") designators.push(designatorOf(reading, child));
  }
  const value = childOf(node, "value") ?? node;
  return { first: node.first, end: node.end, designators, value: expressionOf(reading, value) };
}

function designatorOf(reading: Reading, node: RawNode): Designator {
  const { first, end } = node;
  const inner = node.children.filter((child) => child.type !== "[" && child.type !== "]");
  const index = childOf(node, "start") ?? inner[0];
  if (node.type === "subscript_range_designator" || node.type === "subscript_designator") {
    const upTo = childOf(node, "end");
    if (index !== undefined) {
      return {
        kind: "index",
        first,
        end,
        index: expressionOf(reading, index),
        upTo: upTo === undefined ? undefined : expressionOf(reading, upTo),
      };
    }
  }
  return { kind: "field", first, end, name: reading.text(end - 1) };
}
