import { KeptResults } from "../typed/kept-results.ts";
import type { TypedExpression, Variable } from "../typed/nodes.ts";
import type { DataModel } from "../types/types.ts";
import { evaluateAny } from "./expressions.ts";
import { type Location, locate } from "./locate.ts";
import type { Evaluation } from "./problems.ts";
import { type UnknownValue, unknown, type Value } from "./value.ts";

/** Values of variables that hold while an expression is looked at: parameters, locals, objects elsewhere. */
export type Environment = ReadonlyMap<Variable, Value>;

/** One evaluation: what is known besides the expression, and how much work is left. */
export interface Run {
  readonly model: DataModel;
  /** Undefined outside calls. */
  readonly environment: Map<Variable, Value> | undefined;
  /** What was found out already, for whoever asks for every part of a tree; undefined in calls. */
  readonly found: Map<TypedExpression, Evaluation<Value>> | undefined;
  readonly budget: Budget;
}

/** How much one evaluation may take before the answer is given up. */
export interface Budget {
  /** Statements and calls left. */
  steps: number;
  /** Levels of expressions, statements and initialisers below the one asked for. */
  depth: number;
}

/** Statements and calls that one constant may take; a table of 256 entries filled in a loop needs 2,000. */
const mostSteps = 20_000;

/** Levels that are gone down: a sum of 400 terms, each converted, takes 800. */
export const deepestLevel = 1000;

const tooDeep: Evaluation<Value> = {
  value: unknown("nested too deeply"),
  problem: undefined,
  spoilt: false,
  exact: undefined,
};

/** Evaluates within a run. */
export function evaluateIn(run: Run, expression: TypedExpression): Evaluation<Value> {
  const { found, budget } = run;
  if (expression.kind === "integer") return evaluateAny(run, expression);
  const known = found?.get(expression);
  if (known !== undefined) return known;
  if (budget.depth >= deepestLevel) return tooDeep;
  budget.depth += 1;
  const evaluation = evaluateAny(run, expression);
  budget.depth -= 1;
  found?.set(expression, evaluation);
  return evaluation;
}

function newRun(model: DataModel, environment?: Environment): Run {
  return {
    model,
    environment: environment && new Map(environment),
    found: undefined,
    budget: { steps: mostSteps, depth: 0 },
  };
}

const initial = new KeptResults<TypedExpression, Value>();
/** Initialisers whose value is being found out. */
const open = new Set<TypedExpression>();
const circular = unknown("the value depends on itself");

/**
 * The value of a constant's initialiser. It is kept: constants are asked for again and again. While it is being
 * found out it is not known, so that constants that need each other come to an end.
 */
export function initialValue(run: Run, initializer: TypedExpression): Value {
  const { model } = run;
  const known = initial.known(model, initializer);
  if (known !== undefined) return known;
  if (open.has(initializer)) return circular;
  const { depth } = run.budget;
  if (depth >= deepestLevel) return tooDeep.value;
  open.add(initializer);
  const budget: Budget = { steps: mostSteps, depth: depth + levelsOfConstant };
  const inside: Run = { model, environment: undefined, found: undefined, budget };
  const value = initial.get(model, initializer, () => evaluateIn(inside, initializer).value);
  open.delete(initializer);
  return value;
}

/** What going from a constant to its initialiser counts for: it may have to be typed on the way. */
const levelsOfConstant = 4;

/**
 * The value of an expression with the target's sizes: promotions, wrap-around, shifts, casts, comparisons,
 * `?:`, enumerators, `const` and `constexpr` objects with constant initialisers, their elements and fields, and
 * calls of functions made of plain statements on locals. Addresses of objects and fixed addresses are values.
 * Anything else is `unknown` with the reason. Never throws.
 */
export function evaluate(expression: TypedExpression, model: DataModel, environment?: Environment): Value {
  return evaluateIn(newRun(model, environment), expression).value;
}

/** A way to evaluate all expressions of a tree, telling what goes wrong at each; nothing is evaluated twice. */
export function evaluator(model: DataModel): (expression: TypedExpression) => Evaluation<Value> {
  const found = new Map<TypedExpression, Evaluation<Value>>();
  const budget: Budget = { steps: mostSteps, depth: 0 };
  const run: Run = { model, environment: undefined, found, budget };
  return (expression) => {
    budget.steps = mostSteps;
    return evaluateIn(run, expression);
  };
}

/** Where an object is, as far as constants tell. */
export function place(expression: TypedExpression, model: DataModel): Location | UnknownValue {
  return locate(newRun(model), expression);
}
