import type { Span } from "../finding.ts";
import type { Enumerator, TypedExpression } from "../reader/typed/nodes.ts";
import { macroConstantAt } from "./macro-constant.ts";
import type { Place } from "./place.ts";
import { symbolConstantAt } from "./symbol-constant.ts";

/** A named constant at a place: the name or the value in its declaration, or one of its uses. */
export interface NamedConstant {
  readonly name: string;
  /** `value`: the one token that gives the value. */
  readonly part: "name" | "value" | "use";
  readonly span: Span;
  /** Its name where it is declared. */
  readonly declared: Span;
  /** The places that use it. */
  readonly uses: readonly Span[];
  /** What it stands for; undefined where that is no single expression. */
  readonly value: TypedExpression | Enumerator | undefined;
}

/** Undefined where no macro, variable or enumerator is declared or used. */
export function namedConstantAt(place: Place): NamedConstant | undefined {
  return macroConstantAt(place) ?? symbolConstantAt(place);
}
