import type { RawNode } from "../grammar/raw-nodes.ts";
import type { AssemblyOperand, Statement } from "../nodes.ts";
import { expressionOf } from "./expressions.ts";
import { childOf, type Reading } from "./reading.ts";
import { stringParts } from "./strings.ts";

type Assembly = Extract<Statement, { kind: "assembly" }>;

/** `asm ("..." : outputs : inputs)`: the template with its literals joined, without quotes, escapes as written. */
export function assemblyOf(reading: Reading, node: RawNode): Assembly {
  const { first, end } = node;
  const code = childOf(node, "assembly_code");
  if (code === undefined)
    return { kind: "assembly", first, end, text: "", operands: false, outputs: [], inputs: [] };
  return {
    kind: "assembly",
    first,
    end,
    text: textOf(reading, code),
    operands: reading.text(code.end) !== ")",
    outputs: operandsOf(reading, childOf(node, "output_operands")),
    inputs: operandsOf(reading, childOf(node, "input_operands")),
  };
}

function textOf(reading: Reading, node: RawNode): string {
  return stringParts(reading, node)
    .map((part) => part.slice(part.indexOf('"') + 1, part.lastIndexOf('"')))
    .join("");
}

function operandsOf(reading: Reading, list: RawNode | undefined): readonly AssemblyOperand[] {
  return (list?.children ?? []).flatMap((node) => {
    const constraint = childOf(node, "constraint");
    const value = childOf(node, "value");
    const symbol = childOf(node, "symbol");
    if (constraint === undefined || value === undefined) return [];
    return {
      first: node.first,
      end: node.end,
      name: symbol === undefined ? undefined : reading.text(symbol.first),
      constraint: textOf(reading, constraint),
      value: expressionOf(reading, value),
    };
  });
}
