import type { Span } from "../../finding.ts";
import type { FunctionDefinition, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { operandsOf, walkStatement } from "../../reader/typed/walk.ts";
import { ownRange, type TextOf } from "./source-text.ts";

/** An expression of the function with the place that it can be written over at. */
export interface CodeExpression {
  readonly expression: TypedExpression;
  readonly span: Span;
  /** What it is an operand of, past conversions that nobody wrote; undefined at the top. */
  readonly parent: TypedExpression | undefined;
  /** Which operand of it: 0 is the first. */
  readonly position: number;
}

export interface CodeStatement {
  readonly statement: TypedStatement;
  readonly span: Span;
}

/** The parts of a function that can be written over, in the order of the source. */
export interface EncoderCode {
  readonly expressions: readonly CodeExpression[];
  readonly statements: readonly CodeStatement[];
}

export function codeOf({ body }: FunctionDefinition, textOf: TextOf): EncoderCode {
  const expressions: CodeExpression[] = [];
  const statements: CodeStatement[] = [];
  const parents = new Map<TypedExpression, { parent: TypedExpression; position: number }>();
  walkStatement(body, {
    statement: (statement) => {
      const span = ownRange(statement.at, textOf);
      if (span !== undefined) statements.push({ statement, span });
      return true;
    },
    expression: (expression) => {
      const own = parents.get(expression);
      for (const [position, operand] of operandsOf(expression).entries()) {
        parents.set(
          operand,
          isWritten(expression) || own === undefined ? { parent: expression, position } : own,
        );
      }
      const span = isWritten(expression) ? ownRange(expression.at, textOf) : undefined;
      if (span !== undefined)
        expressions.push({ expression, span, parent: own?.parent, position: own?.position ?? 0 });
      return true;
    },
  });
  return { expressions, statements };
}

function isWritten(expression: TypedExpression): boolean {
  return expression.kind !== "convert" || expression.reason === "explicit";
}

/** Whether the value of something of this name is read here. */
export function isUse({ expression, parent, position }: CodeExpression, name: string): boolean {
  // What is assigned to is not read.
  if ((parent?.kind === "assign" || parent?.kind === "compound-assign") && position === 0) return false;
  if (expression.kind === "member") return expression.field.name === name;
  return expression.kind === "variable" && expression.variable.name === name;
}
