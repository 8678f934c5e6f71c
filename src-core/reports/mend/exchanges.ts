import type { Fix, Span } from "../../finding.ts";
import { type CodeExpression, isUse } from "./encoder-code.ts";
import type { Literal } from "./literals.ts";
import { ownSpan, replaced, type TextOf } from "./source-text.ts";

/** Changes that let two numbers of the same kind change places. */
export function* exchangedNumbers(literals: readonly Literal[]): Generator<Fix> {
  for (const [index, one] of literals.entries()) {
    for (const other of literals.slice(index + 1)) {
      if (one.role !== other.role || one.value === other.value || one.span.start === other.span.start)
        continue;
      yield {
        title: `Exchange ${one.text} and ${other.text}`,
        edits: [replaced(one.span, other.text), replaced(other.span, one.text)],
      };
    }
  }
}

/** Changes that let two names change places in `among`, or put one in another's place once. */
export function* exchangedNames(
  among: readonly CodeExpression[],
  names: readonly string[],
  textOf: TextOf,
): Generator<Fix> {
  const usesOf = (name: string): readonly Span[] =>
    among.flatMap((code) => (isUse(code, name) ? (ownSpan(code.expression.at.last, textOf) ?? []) : []));
  const uses = new Map(names.map((name) => [name, usesOf(name)]));
  for (const [index, one] of names.entries()) {
    for (const other of names.slice(index + 1)) {
      const [ofOne = [], ofOther = []] = [uses.get(one), uses.get(other)];
      if (ofOne.length === 0 || ofOther.length === 0) continue;
      yield {
        title: `Exchange ${one} and ${other}`,
        edits: [...ofOne.map((span) => replaced(span, other)), ...ofOther.map((span) => replaced(span, one))],
      };
    }
  }
  for (const [name, spans] of uses) {
    for (const span of spans) {
      for (const other of names) {
        if (other !== name)
          yield { title: `Write ${other} instead of ${name}`, edits: [replaced(span, other)] };
      }
    }
  }
}
