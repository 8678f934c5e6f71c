import type { TypedExpression } from "../typed/nodes.ts";
import type { IntegerType } from "../types/types.ts";

/**
 * What goes wrong while a constant is computed:
 * - `overflow`: a signed result does not fit its type (C11 6.5p5), as `60 * 1000` in a 16-bit `int`;
 * - `wrap`: an unsigned sum or product does not fit and loses its upper bits (defined, C11 6.2.5p9);
 * - `conversion`: an implicit conversion loses bits, as `uint8_t x = 832`;
 * - `sign`: a result that reached the sign bit (`1 << 15`) is widened, and its sign with it;
 * - `shift`: a shift by as many bits as the type has, by more, or by less than none (C11 6.5.7p3);
 * - `division`: by zero (C11 6.5.5p5).
 */
export type ConstantProblemKind = "overflow" | "wrap" | "conversion" | "sign" | "shift" | "division";

export interface ConstantProblem {
  readonly kind: ConstantProblemKind;
  /** Where it occurs: the operator or the conversion. */
  readonly expression: TypedExpression;
  /** With unlimited precision; undefined where arithmetic has no answer either. */
  readonly meant: bigint | undefined;
  /** On the target; undefined where the standard leaves it open. */
  readonly got: bigint | undefined;
  /** The type that the value does not fit, or the type shifted. */
  readonly type: IntegerType;
}

/** The value of an expression with what went wrong in it. */
export interface Evaluation<Result> {
  readonly value: Result;
  /** At this very expression. */
  readonly problem: ConstantProblem | undefined;
  /** Here or in an operand: what follows from it is not reported again. */
  readonly spoilt: boolean;
  /** The value with unlimited precision where a sign bit was reached and it differs; else undefined. */
  readonly exact: bigint | undefined;
}
