import type { Span } from "../../finding.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import { isStandIn, type Token, visibleSpan } from "../../reader/tokens.ts";
import { KeptResults } from "../../reader/typed/kept-results.ts";
import type { TypedExpression, TypedUnit } from "../../reader/typed/nodes.ts";
import { type PieceOfCode, piecesOf, walkPiece } from "../../reader/typed/walk.ts";
import type { DataModel } from "../../reader/types/types.ts";

/** Places of the project's text, outside of built-in headers, where a constant has one of these values or a text holds it. */
export function mentionsOf(program: Program, values: ReadonlySet<number>): readonly Span[] {
  const found = new Map<string, Span>();
  for (const { typed } of program.units) {
    for (const piece of piecesOf(typed)) {
      for (const { numbers, first } of constantsIn(piece, typed)) {
        if (!numbers.some((number) => values.has(number))) continue;
        const { file, start, end } = visibleSpan(first);
        if (!isStandIn(file)) found.set(`${file} ${start}`, { file, start, end });
      }
    }
  }
  return [...found.values()];
}

interface Constant {
  /** Its value, or the bytes of a text. */
  readonly numbers: readonly number[];
  readonly first: Token;
}

const kept = new KeptResults<PieceOfCode, readonly Constant[]>();

function constantsIn(piece: PieceOfCode, { lasting, model }: TypedUnit): readonly Constant[] {
  return kept.get(lasting, piece, () => {
    const found: Constant[] = [];
    walkPiece(piece, {
      expression(expression) {
        const numbers = numbersOf(expression, model);
        if (numbers.length > 0) found.push({ numbers, first: expression.at.first });
        return true;
      },
    });
    return found;
  });
}

function numbersOf(expression: TypedExpression, model: DataModel): readonly number[] {
  switch (expression.kind) {
    case "integer":
      return [Number(expression.value)];
    case "string":
      return expression.bytes;
    case "enumerator":
      return [Number(expression.enumerator.value ?? -1)];
    case "arithmetic": {
      const value = evaluate(expression, model);
      return value.kind === "integer" ? [Number(value.value)] : [];
    }
    default:
      return [];
  }
}
