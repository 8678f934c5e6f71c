import type { TypedBlock, TypedExpression, Variable } from "../typed/nodes.ts";
import type { Type } from "../types/types.ts";
import { evaluateIn, type Run } from "./evaluate.ts";
import { execute } from "./statements.ts";
import { unknown, type Value } from "./value.ts";

/** What a call takes of the budget: it bounds the depth of recursion, too. */
const callCost = 100;

/** The value of a call of a function whose body can be followed (C++14 5.20 goes about as far). */
export function callFunction(run: Run, expression: Extract<TypedExpression, { kind: "call" }>): Value {
  const { callee } = expression;
  if (callee.kind !== "function") return unknown("a call through a pointer");
  const symbol = callee.function;
  const { definition } = symbol;
  if (definition === undefined)
    return unknown(`what \`${symbol.name}\` gives is not known before the program runs`);
  run.budget.steps -= callCost;
  if (run.budget.steps <= 0) return unknown("too much work for a constant");
  const locals = new Map<Variable, Value>();
  for (const [index, parameter] of definition.parameters.entries()) {
    const argument = expression.arguments[index];
    if (argument === undefined) return unknown(`an argument of \`${symbol.name}\` is missing`);
    if (!isChangeable(parameter.type)) locals.set(parameter, evaluateIn(run, argument).value);
  }
  const inside: Run = { model: run.model, environment: locals, found: undefined, budget: run.budget };
  const outcome = execute(inside, locals, definition.body);
  if (outcome.kind === "return") return outcome.value;
  if (outcome.kind === "unknown") return outcome;
  return unknown(`\`${symbol.name}\` returns no value`);
}

/** A reference through which the caller's object could be changed: such a one is not followed. */
function isChangeable(type: Type): boolean {
  return type.kind === "reference" && !type.rvalue && type.to.const !== true;
}

/** `({ ...; value; })`: its statements run on a copy of what is known. */
export function runStatementValue(run: Run, body: TypedBlock): Value {
  const last = body.statements[body.statements.length - 1];
  if (last?.kind !== "expression") return unknown("statements without a value");
  const locals = new Map(run.environment);
  const inside: Run = { model: run.model, environment: locals, found: undefined, budget: run.budget };
  for (const statement of body.statements.slice(0, -1)) {
    const outcome = execute(inside, locals, statement);
    if (outcome.kind === "unknown") return outcome;
    if (outcome.kind !== "next") return unknown("statements that jump");
  }
  return evaluateIn(inside, last.expression).value;
}
