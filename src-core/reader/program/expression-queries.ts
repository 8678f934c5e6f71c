import type { Span } from "../../finding.ts";
import { type Token, visibleRange } from "../tokens.ts";
import type { At, TypedExpression, TypedStatement, Variable } from "../typed/nodes.ts";
import { expressionsOf, walkExpression, walkStatement } from "../typed/walk.ts";
import type { ProgramUnit } from "./program.ts";

export interface ExpressionAt {
  readonly expression: TypedExpression;
  /** What an editor shows of it. */
  readonly span: Span;
}

const spanOf = (at: At): Span => {
  const { file, start, end } = visibleRange(at.first, at.last);
  return { file, start, end };
};

const holds = (span: Span, file: string, offset: number): boolean =>
  span.file === file && offset >= span.start && offset <= span.end;

/** Conversions that the source does not spell out say nothing to a reader. */
function isWritten(expression: TypedExpression): boolean {
  return expression.kind !== "convert" || expression.reason === "explicit";
}

/**
 * The smallest typed expression whose visible span holds the offset (its end included). All that came out of
 * one macro call has the span of the call; of such, the outermost is meant: hovering `UBRR0` gives the register,
 * hovering a constant macro its whole value. Undefined outside expressions.
 */
export function expressionAt(unit: ProgramUnit, file: string, offset: number): ExpressionAt | undefined {
  let best: ExpressionAt | undefined;
  for (const each of expressionsAround(unit, file, offset)) {
    if (best === undefined || lengthOf(each.span) < lengthOf(best.span)) best = each;
  }
  return best;
}

const lengthOf = (span: Span): number => span.end - span.start;

/** Every written expression whose visible span holds the offset (its end included), outer ones first. */
export function expressionsAround(unit: ProgramUnit, file: string, offset: number): readonly ExpressionAt[] {
  const found: ExpressionAt[] = [];
  const see = (expression: TypedExpression): boolean => {
    const span = spanOf(expression.at);
    if (isWritten(expression) && holds(span, file, offset)) found.push({ expression, span });
    return true;
  };
  const visitor = { expression: see };
  for (const variable of unit.typed.variables) {
    if (covers(variable.declarations, file, offset)) seeVariable(variable, see);
  }
  for (const symbol of unit.typed.functions) {
    if (symbol.standIn || !covers(symbol.declarations, file, offset)) continue;
    const { definition } = symbol;
    if (definition === undefined) continue;
    for (const { initializer } of definition.memberInitializers) {
      for (const expression of expressionsOf(initializer)) walkExpression(expression, visitor);
    }
    walkStatement(definition.body, { ...visitor, statement: (inner) => touches(inner, file, offset) });
  }
  return found;
}

function seeVariable(variable: Variable, see: (expression: TypedExpression) => boolean): void {
  if (variable.initializer === undefined) return;
  for (const expression of expressionsOf(variable.initializer))
    walkExpression(expression, { expression: see });
}

function covers(places: readonly At[], file: string, offset: number): boolean {
  return places.some((at) => holds(spanOf(at), file, offset));
}

/** Whether a statement may hold the offset: what crosses files or macro calls is looked into anyway. */
function touches(statement: TypedStatement, file: string, offset: number): boolean {
  const { first, last } = statement.at;
  return !isPlain(first, last) || holds(spanOf(statement.at), file, offset);
}

function isPlain(first: Token, last: Token): boolean {
  return first.macro === undefined && last.macro === undefined && first.file === last.file;
}
