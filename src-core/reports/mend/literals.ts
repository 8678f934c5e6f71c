import type { Span } from "../../finding.ts";
import type { FunctionDefinition, TypedExpression } from "../../reader/typed/nodes.ts";
import { operandsOf, walkStatement } from "../../reader/typed/walk.ts";
import { ownSpan, type TextOf } from "./source-text.ts";

/** What a number does where it stands. */
export type LiteralRole = "shift" | "mask" | "factor" | "bits";

/** A number of the source that can be written over, in a file or in the body of a macro. */
export interface Literal {
  readonly span: Span;
  readonly text: string;
  readonly value: number;
  readonly role: LiteralRole;
  /** Where the use of it stands, which for a number of a macro is another place. */
  readonly use: Span;
}

/** The numbers of a function, in the order of their uses. */
export function literalsOf(
  { body }: FunctionDefinition,
  textOf: TextOf,
  useOf: (expression: TypedExpression) => Span,
): readonly Literal[] {
  const literals: Literal[] = [];
  const add = (expression: TypedExpression, role: LiteralRole): void => {
    if (expression.kind === "convert") add(expression.operand, role);
    if (expression.kind !== "integer") return;
    const { first, last } = expression.at;
    const span = first === last && first.kind === "number" ? ownSpan(first, textOf) : undefined;
    const value = Number(expression.value);
    if (span === undefined || value > 0xffff) return;
    literals.push({ span, text: first.text, value, role, use: useOf(expression) });
  };
  walkStatement(body, {
    expression: (expression) => {
      for (const [position, operand] of operandsOf(expression).entries())
        add(operand, roleIn(expression, position));
      return true;
    },
  });
  return literals;
}

function roleIn(parent: TypedExpression, position: number): LiteralRole {
  if (parent.kind !== "arithmetic" && parent.kind !== "compound-assign") return "bits";
  switch (parent.operator) {
    case "<<":
    case ">>":
      return position === 1 ? "shift" : "bits";
    case "&":
      return "mask";
    case "*":
    case "/":
    case "%":
      return "factor";
    default:
      return "bits";
  }
}

/** Another number, written as this one is. */
export function writtenLike(text: string, value: number): string {
  const suffix = /[uUlL]+$/.exec(text)?.[0] ?? "";
  const digits = text.slice(0, text.length - suffix.length);
  if (/^0[xX]/.test(digits)) {
    const width = Math.max(digits.length - 2, value > 0xff ? 4 : value > 0xf ? 2 : 1);
    const written = value.toString(16).padStart(width, "0");
    const isLower = /[a-f]/.test(digits.slice(2));
    return `${digits.slice(0, 2)}${isLower ? written : written.toUpperCase()}${suffix}`;
  }
  if (/^0[bB]/.test(digits)) {
    return `${digits.slice(0, 2)}${value.toString(2).padStart(digits.length - 2, "0")}${suffix}`;
  }
  if (/^0[0-7]+$/.test(digits)) return `0${value.toString(8)}${suffix}`;
  return `${value}${suffix}`;
}
