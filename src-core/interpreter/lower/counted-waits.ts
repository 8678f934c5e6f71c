import { evaluate } from "../../reader/constants/evaluate.ts";
import type { TypedExpression, TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf, statementsIn } from "../../reader/typed/walk.ts";
import type { DataModel, Type } from "../../reader/types/types.ts";

/** What a variable that only counts turns can be, and the one number that it is compared with. */
export interface Counted {
  readonly least: number;
  readonly most: number;
  readonly limit: number;
}

/** How the value of an expression is used: only whether it is 0, not at all, or in any way. */
type Use = "tested" | "unused" | "free";

/**
 * Whether a loop does nothing with a local integer but count it up or down by one and compare it with one constant: then turns
 * differ by nothing else until it comes near that constant. Undefined where it does more.
 */
export function countedIn(loop: TypedStatement, variable: Variable, model: DataModel): Counted | undefined {
  const range = rangeOf(variable.type);
  if (range === undefined) return undefined;
  const limits = new Set<number>();
  const visitor = new Uses(variable, limits, model);
  if (!visitor.statement(loop) || limits.size !== 1) return undefined;
  const [limit = 0] = limits;
  return { ...range, limit };
}

class Uses {
  readonly #variable: Variable;
  readonly #limits: Set<number>;
  readonly #model: DataModel;

  constructor(variable: Variable, limits: Set<number>, model: DataModel) {
    this.#variable = variable;
    this.#limits = limits;
    this.#model = model;
  }

  /** False where the variable is used in another way. */
  statement(statement: TypedStatement): boolean {
    const use = usesIn(statement);
    return (
      expressionsIn(statement).every((each) => this.#expression(each, use(each))) &&
      statementsIn(statement).every((each) => this.statement(each))
    );
  }

  #expression(expression: TypedExpression, use: Use): boolean {
    if (this.#isCount(expression)) {
      if (use === "tested") this.#limits.add(0);
      return use === "tested" || (use === "unused" && expression.kind === "update");
    }
    switch (expression.kind) {
      case "convert":
        return this.#expression(expression.operand, this.#useOfConverted(expression, use));
      case "compare":
        return (
          this.#compared(expression.left, expression.right) &&
          this.#compared(expression.right, expression.left)
        );
      case "not":
      case "logical":
        return operandsOf(expression).every((each) => this.#expression(each, "tested"));
      case "statement-value":
      case "lambda":
        return false;
      default:
        return operandsOf(expression).every((each) => this.#expression(each, "free"));
    }
  }

  #useOfConverted({ operand, type }: Extract<TypedExpression, { kind: "convert" }>, use: Use): Use {
    if (type.kind === "void") return "unused";
    if (type.kind === "integer" && type.rank === "bool") return "tested";
    return keepsValue(operand.type, type) ? use : "free";
  }

  #compared(side: TypedExpression, other: TypedExpression): boolean {
    if (!this.#isCount(unconverted(side))) return this.#expression(side, "free");
    const value = evaluate(other, this.#model);
    if (value.kind !== "integer") return false;
    this.#limits.add(Number(value.value));
    return true;
  }

  /** The variable, or its change by one. */
  #isCount(expression: TypedExpression): boolean {
    const place = expression.kind === "update" ? expression.operand : expression;
    return place.kind === "variable" && place.variable === this.#variable;
  }
}

function usesIn(statement: TypedStatement): (expression: TypedExpression) => Use {
  switch (statement.kind) {
    case "expression":
      return () => "unused";
    case "if":
    case "while":
    case "do":
      return () => "tested";
    case "for":
      return (expression) => (expression === statement.step ? "unused" : "tested");
    default:
      return () => "free";
  }
}

/** What a number was before it was converted to types that hold it as well. */
function unconverted(expression: TypedExpression): TypedExpression {
  if (expression.kind !== "convert" || !keepsValue(expression.operand.type, expression.type))
    return expression;
  return unconverted(expression.operand);
}

function keepsValue(from: Type, to: Type): boolean {
  const [inner, outer] = [rangeOf(from), rangeOf(to)];
  return inner !== undefined && outer !== undefined && outer.least <= inner.least && inner.most <= outer.most;
}

/** Integers of up to 32 bits. */
function rangeOf(type: Type): { readonly least: number; readonly most: number } | undefined {
  if (type.kind !== "integer" || type.rank === "bool" || type.bits > 32) return undefined;
  const { bits, signed } = type;
  return signed
    ? { least: -(2 ** (bits - 1)), most: 2 ** (bits - 1) - 1 }
    : { least: 0, most: 2 ** bits - 1 };
}
