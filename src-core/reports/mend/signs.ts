import type { Fix } from "../../finding.ts";
import type { CodeExpression } from "./encoder-code.ts";
import { replaced } from "./source-text.ts";

type TextAt = (code: CodeExpression) => string;

/** Changes that turn over the sign of what is read of `name`: one use at a time, then all of them. */
export function* otherSigns(
  expressions: readonly CodeExpression[],
  name: string,
  textAt: TextAt,
): Generator<Fix> {
  const uses = expressions.filter((code) => isUse(code, name));
  const negated = expressions.filter(
    ({ expression }) => expression.kind === "negate" && uses.some(({ parent }) => parent === expression),
  );
  for (const code of negated) {
    const text = textAt(code);
    const plain = text.replace(/^-\s*/, "");
    if (plain !== text) yield { title: `Write ${plain} instead of ${text}`, edits: [replaced(code.span, plain)] };
  }
  const plainUses = uses.filter(({ parent }) => parent?.kind !== "negate");
  for (const code of plainUses) yield { title: `Write -${textAt(code)}`, edits: [negation(code, textAt)] };
  const [first] = plainUses;
  if (first !== undefined && plainUses.length > 1) {
    yield {
      title: `Write -${textAt(first)} each time`,
      edits: plainUses.map((code) => negation(code, textAt)),
    };
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

function isUse({ expression, parent, position }: CodeExpression, name: string): boolean {
  // What is assigned to is not read.
  if ((parent?.kind === "assign" || parent?.kind === "compound-assign") && position === 0) return false;
  if (expression.kind === "member") return expression.field.name === name;
  return expression.kind === "variable" && expression.variable.name === name;
}
