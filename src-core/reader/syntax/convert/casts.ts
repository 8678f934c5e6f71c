import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Expression } from "../nodes.ts";
import { argumentsOf } from "./calls.ts";
import { expressionOf, notUnderstoodExpression } from "./expressions.ts";
import { childOf, type Reading } from "./reading.ts";
import { plainTypeName, typeNameOf } from "./types.ts";

export function castOf(reading: Reading, node: RawNode): Expression {
  const type = childOf(node, "type");
  const value = childOf(node, "value");
  if (type === undefined || value === undefined) return notUnderstoodExpression(reading, node, "cast");
  return {
    kind: "cast",
    first: node.first,
    end: node.end,
    style: "c",
    type: typeNameOf(reading, type),
    operands: [expressionOf(reading, value)],
  };
}

export function sizeOf(reading: Reading, node: RawNode): Expression {
  const { first, end } = node;
  const type = childOf(node, "type");
  if (reading.text(first + 1) === "...")
    return { kind: "pack-length", first, end, name: reading.text(first + 3) };
  if (type !== undefined) return { kind: "sizeof-type", first, end, type: typeNameOf(reading, type) };
  const value = childOf(node, "value");
  if (value === undefined) return notUnderstoodExpression(reading, node, "sizeof");
  return { kind: "sizeof-value", first, end, operand: expressionOf(reading, value) };
}

export function alignOf(reading: Reading, node: RawNode): Expression {
  const type = childOf(node, "type");
  if (type === undefined) return notUnderstoodExpression(reading, node, "alignof");
  return { kind: "alignof", first: node.first, end: node.end, type: typeNameOf(reading, type) };
}

/** The member may be a path (`a.b[2]`), of which the grammar sees the first name. */
export function offsetOf(reading: Reading, node: RawNode): Expression {
  const { first, end } = node;
  const type = childOf(node, "type");
  const member = childOf(node, "member");
  if (type === undefined || member === undefined) return notUnderstoodExpression(reading, node, "offsetof");
  let path = "";
  for (let index = member.first; index < end - 1; index += 1) path += reading.text(index);
  return { kind: "offsetof", first, end, type: typeNameOf(reading, type), member: path };
}

/** `(T){...}` or `T{...}`. */
export function compoundOf(reading: Reading, node: RawNode): Expression {
  const { first, end } = node;
  const type = childOf(node, "type");
  const list = childOf(node, "value");
  if (type === undefined || list === undefined) return notUnderstoodExpression(reading, node, "literal");
  if (type.type === "type_descriptor") {
    return {
      kind: "compound",
      first,
      end,
      type: typeNameOf(reading, type),
      list: expressionOf(reading, list),
    };
  }
  const named = plainTypeName(reading, type);
  return { kind: "compound", first: named.first, end, type: named, list: expressionOf(reading, list) };
}

export function newOf(reading: Reading, node: RawNode): Expression {
  const { first, end } = node;
  const type = childOf(node, "type");
  const declarator = childOf(node, "declarator");
  const length = declarator && childOf(declarator, "length");
  const args = childOf(node, "arguments");
  const places = placesOf(reading, childOf(node, "placement"));
  if (type === undefined || places.length > 1) {
    return notUnderstoodExpression(reading, node, "new expression");
  }
  return {
    kind: "new",
    first,
    end,
    placement: places[0],
    type: plainTypeName(reading, type),
    length: length === undefined ? undefined : expressionOf(reading, length),
    form: args === undefined ? "none" : args.type === "initializer_list" ? "braces" : "parentheses",
    arguments: args === undefined ? [] : argumentsOf(reading, args),
  };
}

function placesOf(reading: Reading, list: RawNode | undefined): readonly Expression[] {
  return list === undefined ? [] : argumentsOf(reading, list);
}

export function deleteOf(reading: Reading, node: RawNode): Expression {
  const operand = node.children[node.children.length - 1];
  if (operand === undefined) return notUnderstoodExpression(reading, node, "delete expression");
  const array = node.children.some((child) => child.type === "[");
  return { kind: "delete", first: node.first, end: node.end, array, operand: expressionOf(reading, operand) };
}
