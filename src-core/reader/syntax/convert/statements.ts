import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Block, Statement } from "../nodes.ts";
import { assemblyOf } from "./assembly.ts";
import { conditionOf, forOf, ifOf, rangeForOf } from "./control.ts";
import { declarationOf } from "./declarations.ts";
import { expressionOf } from "./expressions.ts";
import { casesOf, type Label, labelled } from "./labels.ts";
import { childOf, type Reading } from "./reading.ts";

export function notUnderstoodStatement(reading: Reading, first: number, end: number): Statement {
  reading.note(first, end, "This statement is not understood.");
  return { kind: "not-understood", first, end, what: "statement not understood" };
}

export function blockOf(reading: Reading, node: RawNode): Block {
  return {
    kind: "block",
    first: node.first,
    end: node.end,
    statements: statementsOf(reading, node.children),
  };
}

/** The statements among the children of a block; labels take the statement behind them (C11 6.8.1). */
function statementsOf(reading: Reading, children: readonly RawNode[]): readonly Statement[] {
  const found: Statement[] = [];
  let labels: Label[] = [];
  const add = (statement: Statement): void => {
    found.push(labels.length === 0 ? statement : labelled(labels, statement));
    labels = [];
  };
  const visit = (nodes: readonly RawNode[]): void => {
    for (const node of nodes) {
      if (skipped.has(node.type)) continue;
      if (node.type === "case_statement" && !node.broken) {
        const { label, rest } = casesOf(reading, node);
        labels.push(label);
        visit(rest);
      } else add(statementOf(reading, node));
    }
  };
  visit(children);
  if (labels.length > 0) found.push(labelled(labels, undefined));
  return found;
}

const skipped: ReadonlySet<string> = new Set(["{", "}", "MISSING"]);

export function statementOf(reading: Reading, node: RawNode): Statement {
  const { first, end } = node;
  const blanked = reading.presentation.blanked.get(end - 1);
  if (blanked !== undefined && first === end - 1) {
    return notUnderstoodStatement(reading, blanked.first, blanked.end);
  }
  if (node.broken) return notUnderstoodStatement(reading, first, end);
  return reading.deeper(
    () => converted(reading, node),
    () => notUnderstoodStatement(reading, first, end),
  );
}

function converted(reading: Reading, node: RawNode): Statement {
  const { first, end } = node;
  switch (node.type) {
    case "compound_statement":
      return blockOf(reading, node);
    case "expression_statement":
      return expressionStatement(reading, node);
    case ";":
      return { kind: "empty", first, end };
    case "if_statement":
      return ifOf(reading, node);
    case "while_statement":
    case "switch_statement": {
      const condition = childOf(node, "condition");
      const body = childOf(node, "body");
      if (condition === undefined || body === undefined) break;
      const kind = node.type === "while_statement" ? "while" : "switch";
      const read = conditionOf(reading, condition);
      return { kind, first, end, condition: read.condition, body: statementOf(reading, body) };
    }
    case "do_statement": {
      const condition = childOf(node, "condition");
      const body = childOf(node, "body");
      if (condition === undefined || body === undefined) break;
      return {
        kind: "do",
        first,
        end,
        body: statementOf(reading, body),
        condition: expressionOf(reading, condition),
      };
    }
    case "for_statement":
      return forOf(reading, node);
    case "for_range_loop":
      return rangeForOf(reading, node);
    case "case_statement":
      return statementsOf(reading, [node])[0] ?? notUnderstoodStatement(reading, first, end);
    case "labeled_statement":
      return labeledOf(reading, node);
    case "goto_statement":
      return { kind: "goto", first, end, name: reading.text(first + 1) };
    case "break_statement":
      return { kind: "break", first, end };
    case "continue_statement":
      return { kind: "continue", first, end };
    case "return_statement": {
      const value = node.children.find((child) => child.type !== "return" && child.type !== ";");
      return {
        kind: "return",
        first,
        end,
        value: value === undefined ? undefined : expressionOf(reading, value),
        parenthesized: value?.type === "parenthesized_expression",
      };
    }
    case "try_statement":
    case "throw_statement":
      return notUnderstoodStatement(reading, first, end);
  }
  const declaration = declarationOf(reading, node);
  if (declaration === undefined) return { kind: "empty", first, end };
  if (declaration.kind === "not-understood") {
    return {
      kind: "not-understood",
      first: declaration.first,
      end: declaration.end,
      what: "statement not understood",
    };
  }
  return { kind: "declaration", first: declaration.first, end: declaration.end, declaration };
}

function expressionStatement(reading: Reading, node: RawNode): Statement {
  const { first, end } = node;
  const only = node.children[0];
  if (only === undefined || only.type === ";") return { kind: "empty", first, end };
  if (only.type === "gnu_asm_expression") return { ...assemblyOf(reading, only), first, end };
  return { kind: "expression", first, end, expression: expressionOf(reading, only) };
}

function labeledOf(reading: Reading, node: RawNode): Statement {
  const { first, end } = node;
  const body = node.children.find((child) => child.field !== "label" && child.type !== ":");
  return {
    kind: "label",
    first,
    end,
    name: reading.text(first),
    body: body === undefined ? undefined : statementOf(reading, body),
  };
}
