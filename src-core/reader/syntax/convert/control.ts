import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Condition, Declarator, DeclaratorPart, Initializer, Place, Statement } from "../nodes.ts";
import { simpleOf } from "./declarations.ts";
import { declaratorOf } from "./declarators.ts";
import { expressionOf } from "./expressions.ts";
import { simpleName } from "./names.ts";
import { childOf, type Reading } from "./reading.ts";
import { notUnderstoodStatement, statementOf } from "./statements.ts";
import { recordedSpecifiers, specifiersOf } from "./types.ts";

interface ReadCondition {
  readonly init: Statement | undefined;
  readonly condition: Condition;
}

/** What stands in the parentheses of `if`, `while` and `switch`. */
export function conditionOf(reading: Reading, clause: RawNode): ReadCondition {
  const init = childOf(clause, "initializer");
  const value = childOf(clause, "value");
  const statement = init?.children[0];
  return {
    init: statement === undefined ? undefined : statementOf(reading, statement),
    condition: value === undefined ? notUnderstood(reading, clause) : conditionValue(reading, value),
  };
}

function conditionValue(reading: Reading, value: RawNode): Condition {
  if (value.type !== "declaration") return expressionOf(reading, value);
  const declaration = simpleOf(reading, value);
  return declaration.kind === "simple" ? declaration : notUnderstood(reading, value);
}

function notUnderstood(reading: Reading, node: RawNode): Condition {
  reading.note(node.first, node.end, "This condition is not understood.");
  return { kind: "not-understood", first: node.first, end: node.end, what: "condition not understood" };
}

/** An `if` with all its `else if`, read from the last to the first: such chains can be long. */
export function ifOf(reading: Reading, node: RawNode): Statement {
  const chain: RawNode[] = [];
  let last: RawNode | undefined = node;
  let otherwise: RawNode | undefined;
  while (last?.type === "if_statement" && !last.broken) {
    chain.push(last);
    otherwise = childOf(last, "alternative");
    last = otherwise?.children.find((child) => child.type !== "else");
  }
  const heads = chain.map((each) => headOf(reading, each));
  let result = last === undefined ? undefined : statementOf(reading, last);
  for (let index = chain.length - 1; index >= 0; index -= 1) {
    const head = heads[index];
    const each = chain[index];
    if (head === undefined || each === undefined) continue;
    result = { kind: "if", first: each.first, end: each.end, ...head, otherwise: result };
  }
  return result ?? notUnderstoodStatement(reading, node.first, node.end);
}

function headOf(reading: Reading, node: RawNode): ReadCondition & { readonly then: Statement } {
  const clause = childOf(node, "condition");
  const consequence = childOf(node, "consequence");
  const read =
    clause === undefined
      ? { init: undefined, condition: notUnderstood(reading, node) }
      : conditionOf(reading, clause);
  const then =
    consequence === undefined
      ? notUnderstoodStatement(reading, node.first, node.end)
      : statementOf(reading, consequence);
  return { ...read, then };
}

export function forOf(reading: Reading, node: RawNode): Statement {
  const { first, end } = node;
  const init = childOf(node, "initializer");
  const condition = childOf(node, "condition");
  const step = childOf(node, "update");
  const body = childOf(node, "body");
  if (body === undefined) return notUnderstoodStatement(reading, first, end);
  return {
    kind: "for",
    first,
    end,
    init: init === undefined ? undefined : initOf(reading, init),
    condition: condition === undefined ? undefined : forConditionOf(reading, condition),
    step: step === undefined ? undefined : expressionOf(reading, step),
    body: statementOf(reading, body),
  };
}

function forConditionOf(reading: Reading, node: RawNode): Condition {
  const record = reading.presentation.declaredConditions.get(node.first);
  const value = childOf(node, "right");
  if (record === undefined || value === undefined) return expressionOf(reading, node);
  const specifiers = recordedSpecifiers(reading, record);
  const parts: DeclaratorPart[] = [];
  for (let index = node.first - 1; index >= specifiers.end; index -= 1) {
    const place = { first: index, end: index + 1 };
    const text = reading.text(index);
    if (text === "&") parts.push({ ...place, kind: "reference", rvalue: false });
    else if (text === "*") parts.push({ ...place, kind: "pointer", const: false, volatile: false });
  }
  const name = simpleName(reading, node.first);
  const declarator: Declarator = { first: specifiers.end, end: name.end, name, parts, attributes: [] };
  const initializer: Initializer = { ...place(value), kind: "value", value: expressionOf(reading, value) };
  const init = { first: specifiers.end, end: node.end, declarator, bitWidth: undefined, initializer };
  return { kind: "simple", first: specifiers.first, end: node.end, specifiers, declarators: [init] };
}

const place = ({ first, end }: RawNode): Place => ({ first, end });

/** A declaration with its semicolon, or an expression whose semicolon the grammar keeps apart. */
function initOf(reading: Reading, node: RawNode): Statement {
  if (node.type === "declaration") return statementOf(reading, node);
  const expression = expressionOf(reading, node);
  return { kind: "expression", first: node.first, end: node.end + 1, expression };
}

export function rangeForOf(reading: Reading, node: RawNode): Statement {
  const { first, end } = node;
  const type = childOf(node, "type");
  const declarator = childOf(node, "declarator");
  const range = childOf(node, "right");
  const body = childOf(node, "body");
  if (declarator === undefined || range === undefined || body === undefined) {
    return notUnderstoodStatement(reading, first, end);
  }
  const specifiers = specifiersOf(
    reading,
    { first: type?.first ?? declarator.first, end: declarator.first },
    type,
  );
  return {
    kind: "range-for",
    first,
    end,
    specifiers,
    declarator: declaratorOf(reading, declarator, specifiers.end),
    range: expressionOf(reading, range),
    body: statementOf(reading, body),
  };
}
