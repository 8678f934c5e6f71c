import type { TypedExpression, Variable } from "../typed/nodes.ts";
import type { DataModel } from "../types/types.ts";
import { evaluateAny } from "./expressions.ts";
import type { Evaluation } from "./problems.ts";
import { unknown, type Value } from "./value.ts";

/** Values of variables that hold while an expression is looked at: parameters, locals, objects elsewhere. */
export type Environment = ReadonlyMap<Variable, Value>;

/** One evaluation: what is known besides the expression, and how much work is left. */
export interface Run {
  readonly model: DataModel;
  /** Undefined outside calls, where values can be kept for the next time. */
  readonly environment: Map<Variable, Value> | undefined;
  /** Steps of statements and calls left before the answer is given up. */
  readonly budget: { steps: number };
}

/** Statements and calls that one constant may take; a table of 256 entries filled in a loop needs 2,000. */
const mostSteps = 20_000;

const kept = new WeakMap<TypedExpression, Evaluation<Value>>();

const circular: Evaluation<Value> = {
  value: unknown("the value depends on itself"),
  problem: undefined,
  spoilt: false,
  exact: undefined,
};

/** Evaluates within a run; outside calls the answer is kept with the expression. */
export function evaluateIn(run: Run, expression: TypedExpression): Evaluation<Value> {
  if (run.environment !== undefined) return evaluateAny(run, expression);
  const known = kept.get(expression);
  if (known !== undefined) return known;
  kept.set(expression, circular);
  const evaluation = evaluateAny(run, expression);
  kept.set(expression, evaluation);
  return evaluation;
}

export function newRun(model: DataModel, environment?: Environment): Run {
  return {
    model,
    environment: environment && new Map(environment),
    budget: { steps: mostSteps },
  };
}

/**
 * The value of an expression with the target's sizes: promotions, wrap-around, shifts, casts, comparisons,
 * `?:`, enumerators, `const` and `constexpr` objects with constant initialisers, their elements and fields, and
 * calls of functions made of plain statements on locals. Addresses of objects and fixed addresses are values.
 * Anything else is `unknown` with the reason. Never throws. Without an environment the answer is kept.
 */
export function evaluate(expression: TypedExpression, model: DataModel, environment?: Environment): Value {
  return evaluateIn(newRun(model, environment), expression).value;
}

/** `evaluate` with what went wrong at this very expression. */
export function evaluateFully(expression: TypedExpression, model: DataModel): Evaluation<Value> {
  return evaluateIn(newRun(model), expression);
}
