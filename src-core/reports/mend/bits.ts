import { hexText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import type { CodeExpression } from "./encoder-code.ts";
import { inserted, replaced } from "./source-text.ts";

type TextAt = (code: CodeExpression) => string;

/** Sets constant bits in what is stored. */
export function setBits(code: CodeExpression, bits: number, textAt: TextAt): Fix {
  const written = hexText(bits);
  const edits = bindsTighterThanOr(code)
    ? [inserted(code.span, code.span.start, `${written} | `)]
    : [replaced(code.span, `${written} | (${textAt(code)})`)];
  return { title: `Set ${written} as well`, edits };
}

/** Sets a bit, or clears an active-low one, where a condition holds. */
export function setBitWhere(
  code: CodeExpression,
  condition: string,
  bit: number,
  activeLow: boolean,
  textAt: TextAt,
): Fix {
  const written = hexText(2 ** bit);
  const part = activeLow ? `(${condition} ? 0 : ${written})` : `(${condition} ? ${written} : 0)`;
  const edits = bindsTighterThanOr(code)
    ? [inserted(code.span, code.span.end, ` | ${part}`)]
    : [replaced(code.span, `(${textAt(code)}) | ${part}`)];
  return { title: `Add ${part}`, edits };
}

/** Takes all bits away but those of a mask; `isEnclosed` where parentheses stand around it already. */
export function keepBits(code: CodeExpression, mask: number, isEnclosed: boolean, textAt: TextAt): Fix {
  const written = hexText(mask);
  const text = isOneWord(code) ? textAt(code) : `(${textAt(code)})`;
  const masked = `${text} & ${written}`;
  const isAlone =
    isEnclosed || code.parent === undefined || code.parent.kind === "assign" || code.parent.kind === "call";
  return {
    title: `Keep only ${written} of it`,
    edits: [replaced(code.span, isAlone ? masked : `(${masked})`)],
  };
}

function isOneWord({ expression }: CodeExpression): boolean {
  return ["variable", "member", "index", "integer", "call", "method-call"].includes(expression.kind);
}

function bindsTighterThanOr({ expression }: CodeExpression): boolean {
  return (
    expression.kind !== "conditional" &&
    expression.kind !== "logical" &&
    expression.kind !== "comma" &&
    expression.kind !== "assign" &&
    expression.kind !== "compound-assign"
  );
}
