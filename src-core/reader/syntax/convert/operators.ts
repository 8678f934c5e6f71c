import type { RawNode } from "../grammar/raw-nodes.ts";
import type { AssignmentOperator, BinaryOperator, Expression, UnaryOperator } from "../nodes.ts";
import { alternativeOperators } from "../outline/words.ts";
import { expressionOf, notUnderstoodExpression } from "./expressions.ts";
import { nameOf } from "./names.ts";
import { childOf, type Reading } from "./reading.ts";

const unaryOperators: ReadonlyMap<string, UnaryOperator> = new Map([
  ["+", "+"],
  ["-", "-"],
  ["!", "!"],
  ["~", "~"],
  ["*", "*"],
  ["&", "&"],
]);
const binaryOperators: ReadonlyMap<string, BinaryOperator> = new Map([
  ["+", "+"],
  ["-", "-"],
  ["*", "*"],
  ["/", "/"],
  ["%", "%"],
  ["<<", "<<"],
  [">>", ">>"],
  ["<", "<"],
  [">", ">"],
  ["<=", "<="],
  [">=", ">="],
  ["==", "=="],
  ["!=", "!="],
  ["&", "&"],
  ["^", "^"],
  ["|", "|"],
  ["&&", "&&"],
  ["||", "||"],
  [",", ","],
]);
const assignmentOperators: ReadonlyMap<string, AssignmentOperator> = new Map([
  ["=", "="],
  ["+=", "+="],
  ["-=", "-="],
  ["*=", "*="],
  ["/=", "/="],
  ["%=", "%="],
  ["<<=", "<<="],
  [">>=", ">>="],
  ["&=", "&="],
  ["^=", "^="],
  ["|=", "|="],
]);

/** The operator as the tokens spell it: the grammar may have been shown another of the same precedence. */
function operatorText(reading: Reading, index: number): string {
  const text = reading.text(index);
  return alternativeOperators.get(text) ?? text;
}

const missing = (reading: Reading, node: RawNode): Expression =>
  notUnderstoodExpression(reading, node, "expression");

/** Binary operators and commas; long chains of them are read without recursion. */
export function binaryOf(reading: Reading, node: RawNode): Expression {
  const rights: { readonly operator: number; readonly right: RawNode; readonly end: number }[] = [];
  let leftmost: RawNode = node;
  while (leftmost.type === "binary_expression") {
    const left = childOf(leftmost, "left");
    const right = childOf(leftmost, "right");
    const operator = childOf(leftmost, "operator");
    if (left === undefined || right === undefined || operator === undefined)
      return missing(reading, leftmost);
    rights.push({ operator: operator.first, right, end: leftmost.end });
    leftmost = left;
  }
  if (leftmost.type === "comma_expression" && rights.length === 0) return commaOf(reading, node);
  let value = expressionOf(reading, leftmost);
  for (let index = rights.length - 1; index >= 0; index -= 1) {
    const each = rights[index];
    if (each === undefined) continue;
    const operator = binaryOperators.get(operatorText(reading, each.operator));
    if (operator === undefined) return notUnderstoodExpression(reading, node, "operator");
    const right = expressionOf(reading, each.right);
    // From the bracket that may stand around the leftmost operand, which has no node of its own.
    value = { kind: "binary", first: leftmost.first, end: each.end, operator, left: value, right };
  }
  return value;
}

/** The grammar nests `a, b, c` to the right, C to the left (C11 6.5.17). */
function commaOf(reading: Reading, node: RawNode): Expression {
  const operands: RawNode[] = [];
  let rest: RawNode | undefined = node;
  while (rest?.type === "comma_expression") {
    const left = childOf(rest, "left");
    if (left !== undefined) operands.push(left);
    rest = childOf(rest, "right");
  }
  if (rest !== undefined) operands.push(rest);
  const [head, ...others] = operands;
  if (head === undefined) return missing(reading, node);
  let value = expressionOf(reading, head);
  for (const operand of others) {
    const right = expressionOf(reading, operand);
    value = { kind: "binary", first: head.first, end: operand.end, operator: ",", left: value, right };
  }
  return value;
}

export function unaryOf(reading: Reading, node: RawNode): Expression {
  const operand = childOf(node, "argument");
  const operator = unaryOperators.get(operatorText(reading, node.first));
  if (operand === undefined || operator === undefined) return missing(reading, node);
  return {
    kind: "unary",
    first: node.first,
    end: node.end,
    operator,
    operand: expressionOf(reading, operand),
  };
}

/** `++x`, `x++`. The grammar takes `-x++` for `(-x)++`: what stands behind binds closer (C11 6.5.2, 6.5.3). */
export function updateOf(reading: Reading, node: RawNode): Expression {
  const argument = childOf(node, "argument");
  const sign = childOf(node, "operator");
  if (argument === undefined || sign === undefined) return missing(reading, node);
  const operator = reading.text(sign.first) === "++" ? "++" : "--";
  if (sign.first < argument.first) {
    const operand = expressionOf(reading, argument);
    return { kind: "update", first: node.first, end: node.end, operator, position: "prefix", operand };
  }
  const outer: RawNode[] = [];
  let inner = argument;
  while (outermostPrefix.has(inner.type)) {
    const next = childOf(inner, inner.type === "cast_expression" ? "value" : "argument");
    if (next === undefined || next.end !== inner.end) break;
    outer.push(inner);
    inner = next;
  }
  let value: Expression = {
    kind: "update",
    first: inner.first,
    end: node.end,
    operator,
    position: "postfix",
    operand: expressionOf(reading, inner),
  };
  for (let index = outer.length - 1; index >= 0; index -= 1) {
    const each = outer[index];
    if (each !== undefined) value = prefixed(reading, each, value, node.end);
  }
  return value;
}

const outermostPrefix: ReadonlySet<string> = new Set(["unary_expression", "pointer_expression"]);

function prefixed(reading: Reading, node: RawNode, operand: Expression, end: number): Expression {
  const operator = unaryOperators.get(operatorText(reading, node.first));
  if (operator === undefined) return missing(reading, node);
  return { kind: "unary", first: node.first, end, operator, operand };
}

export function assignOf(reading: Reading, node: RawNode): Expression {
  const target = childOf(node, "left");
  const value = childOf(node, "right");
  const sign = childOf(node, "operator");
  const operator = sign && assignmentOperators.get(operatorText(reading, sign.first));
  if (target === undefined || value === undefined || operator === undefined) return missing(reading, node);
  return {
    kind: "assign",
    first: node.first,
    end: node.end,
    operator,
    target: expressionOf(reading, target),
    value: expressionOf(reading, value),
  };
}

interface ConditionalArm {
  readonly node: RawNode;
  readonly condition: Expression;
  readonly then: Expression | undefined;
}

/** `a ? b : c` and the GNU form `a ?: c`; chains to the right are read without recursion. */
export function conditionalOf(reading: Reading, node: RawNode): Expression {
  const arms: ConditionalArm[] = [];
  let last: RawNode | undefined = node;
  while (last?.type === "conditional_expression") {
    const test = childOf(last, "condition");
    const consequence = childOf(last, "consequence");
    if (test === undefined) return missing(reading, last);
    const condition = expressionOf(reading, test);
    const then = consequence === undefined ? undefined : expressionOf(reading, consequence);
    arms.push({ node: last, condition, then });
    last = childOf(last, "alternative");
  }
  if (last === undefined) return missing(reading, node);
  let otherwise = expressionOf(reading, last);
  for (const { node: each, condition, then } of arms.reverse()) {
    otherwise = { kind: "conditional", first: each.first, end: each.end, condition, then, otherwise };
  }
  return otherwise;
}

export function indexOf(reading: Reading, node: RawNode): Expression {
  const array = childOf(node, "argument");
  const list = childOf(node, "indices");
  const indexes =
    list?.children.filter((child) => child.type !== "[" && child.type !== "]" && child.type !== ",") ?? [];
  const [head, ...others] = indexes;
  if (array === undefined || head === undefined) return missing(reading, node);
  let index = expressionOf(reading, head);
  for (const other of others) {
    const right = expressionOf(reading, other);
    index = { kind: "binary", first: index.first, end: right.end, operator: ",", left: index, right };
  }
  return { kind: "index", first: node.first, end: node.end, array: expressionOf(reading, array), index };
}

export function memberOf(reading: Reading, node: RawNode): Expression {
  const object = childOf(node, "argument");
  const field = childOf(node, "field");
  const operator = childOf(node, "operator");
  const sign = operator === undefined ? "" : reading.text(operator.first);
  if (object === undefined || field === undefined || (sign !== "." && sign !== "->"))
    return missing(reading, node);
  return {
    kind: "member",
    first: node.first,
    end: node.end,
    object: expressionOf(reading, object),
    arrow: sign === "->",
    member: nameOf(reading, field),
  };
}
