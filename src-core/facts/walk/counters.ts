import { mirrored, opposite } from "../../reader/typed/comparisons.ts";
import type {
  ComparisonOperator,
  TypedExpression,
  TypedStatement,
  Variable,
} from "../../reader/typed/nodes.ts";
import { withoutConversions } from "../../reader/typed/without-conversions.ts";
import { evaluate } from "./expressions.ts";
import { heldValue } from "./load-store.ts";
import type { Machine } from "./machine.ts";
import { integerOf } from "./values.ts";
import { visitExpression, visitStatement } from "./visit.ts";

/** The parts of a loop that decide how often it runs. */
export interface LoopParts {
  readonly statement: TypedStatement;
  /** `while (T x = ...)`: done before each test. */
  readonly declared: TypedStatement | undefined;
  readonly condition: TypedExpression | undefined;
  readonly step: TypedExpression | undefined;
  readonly body: TypedStatement;
  readonly tested: "before" | "after";
}

/** A counter as a condition uses it: what is compared, and how it moves between two tests. */
interface Counter {
  readonly variable: Variable;
  readonly operator: ComparisonOperator;
  readonly limit: number;
  /** Added to the counter before the value is compared, in the first test. */
  readonly ahead: number;
  readonly by: number;
}

/** Turns that a counter in the condition allows, by the values at the loop's start; undefined for none. */
export function turnsByCounter(machine: Machine, parts: LoopParts): number | undefined {
  if (allUpdates(parts).size === 0) return undefined;
  let least: number | undefined;
  const consider = (turns: number | undefined): void => {
    if (turns !== undefined && (least === undefined || turns < least)) least = turns;
  };
  for (const part of conjuncts(parts.condition)) consider(turnsOf(machine, part, parts, "stay"));
  return least;
}

/** The same for `if (++tries > 1000) return;` in the body. */
export function turnsByLeaving(machine: Machine, parts: LoopParts): number | undefined {
  if (allUpdates(parts).size === 0) return undefined;
  let least: number | undefined;
  const statements = parts.body.kind === "block" ? parts.body.statements : [parts.body];
  for (const statement of statements) {
    if (statement.kind !== "if" || !leaves(statement.then)) continue;
    for (const part of disjuncts(statement.condition)) {
      const stays = turnsOf(machine, part, parts, "leave");
      if (stays !== undefined && (least === undefined || stays + 1 < least)) least = stays + 1;
    }
  }
  return least;
}

function leaves(statement: TypedStatement): boolean {
  if (statement.kind === "block") {
    const last = statement.statements[statement.statements.length - 1];
    return last !== undefined && leaves(last);
  }
  return statement.kind === "break" || statement.kind === "return" || statement.kind === "goto";
}

/** The parts that `&&` joins. */
export function conjuncts(condition: TypedExpression | undefined): TypedExpression[] {
  if (condition === undefined) return [];
  if (condition.kind !== "logical" || condition.operator !== "&&") return [condition];
  return [...conjuncts(condition.left), ...conjuncts(condition.right)];
}

function disjuncts(condition: TypedExpression): TypedExpression[] {
  if (condition.kind !== "logical" || condition.operator !== "||") return [condition];
  return [...disjuncts(condition.left), ...disjuncts(condition.right)];
}

/** How often the loop turns while `condition` holds (`stay`) or does not (`leave`). */
function turnsOf(
  machine: Machine,
  condition: TypedExpression,
  parts: LoopParts,
  when: "stay" | "leave",
): number | undefined {
  const test = withoutConversions(condition);
  if (test.kind === "not") return turnsOf(machine, test.operand, parts, when === "stay" ? "leave" : "stay");
  const counter = counterOf(machine, test, parts);
  if (counter === undefined) return undefined;
  const start = integerOf(heldValue(machine, machine.placeOf(counter.variable)));
  if (start === undefined) return undefined;
  const operator = when === "stay" ? counter.operator : opposite[counter.operator];
  return count(start + counter.ahead, counter.by, operator, counter.limit);
}

function counterOf(machine: Machine, test: TypedExpression, parts: LoopParts): Counter | undefined {
  if (test.kind !== "compare") return counterIn(machine, test, "!=", 0, parts);
  const { operator } = test;
  const right = constantOf(machine, test.right, parts);
  if (right !== undefined) return counterIn(machine, withoutConversions(test.left), operator, right, parts);
  const left = constantOf(machine, test.left, parts);
  return left === undefined
    ? undefined
    : counterIn(machine, withoutConversions(test.right), mirrored[operator], left, parts);
}

function counterIn(
  machine: Machine,
  counted: TypedExpression,
  operator: ComparisonOperator,
  limit: number,
  parts: LoopParts,
): Counter | undefined {
  if (counted.kind === "update") {
    const operand = withoutConversions(counted.operand);
    if (operand.kind !== "variable" || updatesOf(machine, operand.variable, parts).length !== 1)
      return undefined;
    const by = counted.operator === "++" ? 1 : -1;
    return { variable: operand.variable, operator, limit, ahead: counted.position === "prefix" ? by : 0, by };
  }
  if (counted.kind !== "variable") return undefined;
  const updates = updatesOf(machine, counted.variable, parts);
  const [by] = updates;
  if (by === undefined || updates.length !== 1) return undefined;
  return { variable: counted.variable, operator, limit, ahead: parts.tested === "after" ? by : 0, by };
}

/** A number that the loop does not change. */
function constantOf(machine: Machine, expression: TypedExpression, parts: LoopParts): number | undefined {
  let steady = true;
  visitExpression(expression, (part) => {
    if (part.kind === "variable" && updatesOf(machine, part.variable, parts).length > 0) steady = false;
    if (part.kind === "call" || part.kind === "method-call" || part.kind === "update") steady = false;
  });
  return steady ? integerOf(machine.quietly(() => evaluate(machine, expression))) : undefined;
}

/** A write to a variable in one turn: what is added to it, or that it is something else. */
type Update = number | TypedExpression | "other";

const updatesByLoop = new WeakMap<TypedStatement, ReadonlyMap<Variable, readonly Update[]>>();

/** What is added to a variable in one turn, write by write; NaN for a write that is no addition of a constant. */
function updatesOf(machine: Machine, variable: Variable, parts: LoopParts): number[] {
  const found = allUpdates(parts).get(variable);
  if (found === undefined) return [];
  return found.map((update) => {
    if (update === "other") return Number.NaN;
    if (typeof update === "number") return update;
    if (update.kind !== "compound-assign") return Number.NaN;
    const by = integerOf(machine.quietly(() => evaluate(machine, update.value)));
    const sign = update.operator === "+" ? 1 : update.operator === "-" ? -1 : Number.NaN;
    return sign * (by ?? Number.NaN);
  });
}

/** All writes in a loop to variables by name; found once for each loop. */
function allUpdates(parts: LoopParts): ReadonlyMap<Variable, readonly Update[]> {
  const known = updatesByLoop.get(parts.statement);
  if (known !== undefined) return known;
  const updates = new Map<Variable, Update[]>();
  const add = (target: TypedExpression, update: Update): void => {
    const named = withoutConversions(target);
    if (named.kind !== "variable") return;
    const held = updates.get(named.variable);
    if (held === undefined) updates.set(named.variable, [update]);
    else held.push(update);
  };
  const seen = (expression: TypedExpression): void => {
    if (expression.kind === "update") add(expression.operand, expression.operator === "++" ? 1 : -1);
    else if (expression.kind === "assign") add(expression.target, "other");
    else if (expression.kind === "compound-assign") add(expression.target, expression);
  };
  if (parts.condition !== undefined) visitExpression(parts.condition, seen);
  if (parts.step !== undefined) visitExpression(parts.step, seen);
  visitStatement(parts.body, seen);
  updatesByLoop.set(parts.statement, updates);
  return updates;
}

/** How many values from `start` on, `by` apart, hold against the limit before the first that does not. */
function count(start: number, by: number, operator: ComparisonOperator, limit: number): number | undefined {
  if (by === 0 || Number.isNaN(by)) return undefined;
  const distance = (limit - start) / by;
  switch (operator) {
    case "<":
      return start >= limit ? 0 : by > 0 ? Math.ceil(distance) : undefined;
    case "<=":
      return start > limit ? 0 : by > 0 ? Math.floor(distance) + 1 : undefined;
    case ">":
      return start <= limit ? 0 : by < 0 ? Math.ceil(distance) : undefined;
    case ">=":
      return start < limit ? 0 : by < 0 ? Math.floor(distance) + 1 : undefined;
    case "!=":
      return Number.isInteger(distance) && distance >= 0 ? distance : undefined;
    case "==":
      return start === limit ? 1 : 0;
  }
}
