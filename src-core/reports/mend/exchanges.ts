import type { Fix } from "../../finding.ts";
import type { CodeExpression } from "./encoder-code.ts";
import type { Literal } from "./literals.ts";
import { replaced } from "./source-text.ts";

/** Changes that let two numbers of the same kind change places. */
export function* exchangedNumbers(literals: readonly Literal[]): Generator<Fix> {
  for (const [index, one] of literals.entries()) {
    for (const other of literals.slice(index + 1)) {
      if (one.role !== other.role || one.value === other.value || one.span.start === other.span.start) continue;
      yield {
        title: `Exchange ${one.text} and ${other.text}`,
        edits: [replaced(one.span, other.text), replaced(other.span, one.text)],
      };
    }
  }
}

/** Changes that let two names, or all their uses in `among`, change places. `textAt` gives the text of an expression. */
export function* exchangedNames(
  among: readonly CodeExpression[],
  names: readonly string[],
  textAt: (code: CodeExpression) => string,
): Generator<Fix> {
  const uses = (name: string) => among.filter((code) => textAt(code) === name);
  for (const [index, one] of names.entries()) {
    for (const other of names.slice(index + 1)) {
      const [ofOne, ofOther] = [uses(one), uses(other)];
      if (ofOne.length === 0 || ofOther.length === 0) continue;
      yield {
        title: `Exchange ${one} and ${other}`,
        edits: [
          ...ofOne.map(({ span }) => replaced(span, other)),
          ...ofOther.map(({ span }) => replaced(span, one)),
        ],
      };
    }
  }
}
