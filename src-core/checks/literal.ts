import type { Edit, Span } from "../finding.ts";
import { isStandIn, type Token } from "../reader/tokens.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";

/**
 * The number in the source that gives an expression its value: itself, the body of the macro that it comes out
 * of, or the initialiser of the constant that it names. Undefined for anything that is computed.
 */
export function literalToken(expression: TypedExpression): Token | undefined {
  switch (expression.kind) {
    case "integer":
    case "floating": {
      const { first, last } = expression.at;
      return first === last && first.kind === "number" && !isStandIn(first.file) ? first : undefined;
    }
    case "convert":
      return literalToken(expression.operand);
    case "variable": {
      const { initializer, type } = expression.variable;
      const fixed = type.const === true || expression.variable.constexpr;
      return fixed && initializer?.kind === "value" ? literalToken(initializer.value) : undefined;
    }
    default:
      return undefined;
  }
}

/** Plain offsets of a token or span, without what else it carries. */
export function spanOf({ file, start, end }: Span): Span {
  return { file, start, end };
}

export function replaced(span: Span, text: string): Edit {
  return { span: spanOf(span), text };
}

export function inserted(file: string, at: number, text: string): Edit {
  return { span: { file, start: at, end: at }, text };
}
