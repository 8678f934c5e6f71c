import type { Span } from "../../finding.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import { isStandIn, type Token, visibleSpan } from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { walkUnit } from "../../reader/typed/walk.ts";

/** Places of the project's text, outside of built-in headers, where a constant has one of these values or a text holds it. */
export function mentionsOf(program: Program, values: ReadonlySet<number>): readonly Span[] {
  const found = new Map<string, Span>();
  const add = (token: Token): void => {
    const { file, start, end } = visibleSpan(token);
    if (!isStandIn(file)) found.set(`${file} ${start}`, { file, start, end });
  };
  for (const { typed } of program.units) {
    walkUnit(typed, {
      expression(expression) {
        if (holds(expression, values, program)) add(expression.at.first);
        return true;
      },
    });
  }
  return [...found.values()];
}

function holds(expression: TypedExpression, values: ReadonlySet<number>, program: Program): boolean {
  switch (expression.kind) {
    case "integer":
      return values.has(Number(expression.value));
    case "string":
      return expression.bytes.some((byte) => values.has(byte));
    case "enumerator":
      return values.has(Number(expression.enumerator.value ?? -1));
    case "arithmetic": {
      const value = evaluate(expression, program.model);
      return value.kind === "integer" && values.has(Number(value.value));
    }
    default:
      return false;
  }
}
