import type { Fix } from "../../finding.ts";
import { isCalled } from "../../reader/typed/is-called.ts";
import { type CodeExpression, isUse } from "./encoder-code.ts";
import { replaced } from "./source-text.ts";

type TextAt = (code: CodeExpression) => string;

/** Changes that turn over the sign of what is read of `name`, or written to it: one place at a time, then all. */
export function* otherSigns(
  expressions: readonly CodeExpression[],
  name: string,
  textAt: TextAt,
): Generator<Fix> {
  for (const code of expressions) {
    if (code.expression.kind !== "negate") continue;
    const text = textAt(code);
    const plain = text.replace(/^-\s*/, "");
    if (plain !== text)
      yield { title: `Write ${plain} instead of ${text}`, edits: [replaced(code.span, plain)] };
  }
  const uses = expressions.filter((code) => isUse(code, name) && code.parent?.kind !== "negate");
  for (const code of uses) yield { title: `Write -${textAt(code)}`, edits: [negation(code, textAt)] };
  const [first] = uses;
  if (first !== undefined && uses.length > 1) {
    yield { title: `Write -${textAt(first)} each time`, edits: uses.map((code) => negation(code, textAt)) };
  }
  for (const code of expressions) {
    const { parent, position } = code;
    if (parent?.kind !== "assign" || position !== 1 || !isCalled(parent.target, name)) continue;
    const text = textAt(code);
    const written = code.expression.kind === "arithmetic" ? `-(${text})` : `-${text}`;
    yield { title: `Write ${written}`, edits: [replaced(code.span, written)] };
  }
}

/** Changes that turn over a truth: `!` put before it or taken away. */
export function* otherTruths(
  expressions: readonly CodeExpression[],
  name: string,
  textAt: TextAt,
): Generator<Fix> {
  for (const code of expressions) {
    const { expression, span, parent } = code;
    const text = textAt(code);
    if (expression.kind === "not" && text.startsWith("!")) {
      const plain = text.slice(1).trimStart();
      yield { title: `Write ${plain} instead of ${text}`, edits: [replaced(span, plain)] };
    }
    if (isUse(code, name) && parent?.kind !== "not") {
      yield { title: `Write !${text}`, edits: [replaced(span, `!${text}`)] };
    }
  }
}

function negation(code: CodeExpression, textAt: TextAt) {
  const { parent, span } = code;
  // Behind another sign `-` would be read as part of `--`; behind a cast or alone it binds as it should.
  const isBare = parent === undefined || parent.kind === "convert" || parent.kind === "call";
  return replaced(span, isBare || parent.kind === "assign" ? `-${textAt(code)}` : `(-${textAt(code)})`);
}
