import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Capture, Expression } from "../nodes.ts";
import { declaratorOf } from "./declarators.ts";
import { expressionOf, notUnderstoodExpression } from "./expressions.ts";
import { childOf, type Reading } from "./reading.ts";
import { blockOf } from "./statements.ts";

/** `[captures](parameters) -> T { body }` (C++ [expr.prim.lambda]). */
export function lambdaOf(reading: Reading, node: RawNode): Expression {
  const { first, end } = node;
  const list = childOf(node, "captures");
  const body = childOf(node, "body");
  if (list === undefined || body === undefined) return notUnderstoodExpression(reading, node, "lambda");
  const initial = list.children.find((child) => child.type === "lambda_default_capture");
  return {
    kind: "lambda",
    first,
    end,
    captures: capturesOf(reading, list),
    captureDefault:
      initial === undefined ? undefined : reading.text(initial.first) === "&" ? "reference" : "copy",
    declarator: declaratorOf(reading, childOf(node, "declarator"), list.end),
    body: blockOf(reading, body),
  };
}

function capturesOf(reading: Reading, list: RawNode): readonly Capture[] {
  const found: Capture[] = [];
  let reference: number | undefined;
  for (const child of list.children) {
    switch (child.type) {
      case "[":
      case "]":
      case ",":
      case "lambda_default_capture":
        reference = undefined;
        break;
      case "&":
        reference = child.first;
        break;
      case "lambda_capture_initializer":
        found.push(initializedCapture(reading, child));
        break;
      default: {
        const first = reference ?? child.first;
        const name = reading.text(child.end - 1);
        found.push({ first, end: child.end, name, reference: reference !== undefined, value: undefined });
      }
    }
  }
  return found;
}

function initializedCapture(reading: Reading, node: RawNode): Capture {
  const name = childOf(node, "left");
  const value = childOf(node, "right");
  return {
    first: node.first,
    end: node.end,
    name: reading.text(name?.first ?? node.first),
    reference: reading.text(node.first) === "&",
    value: value === undefined ? undefined : expressionOf(reading, value),
  };
}
