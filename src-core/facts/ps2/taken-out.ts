import { holds } from "../../reader/constants/integer-operators.ts";
import { functionCalled } from "../../reader/typed/function-called.ts";
import type { FunctionSymbol, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf, statementsIn, walkStatement } from "../../reader/typed/walk.ts";
import { directEffects, reachedFrom } from "../walk/effects.ts";
import type { Linkage } from "../walk/linkage.ts";
import { countedBy, type Named, namedBy } from "./named.ts";

/**
 * Whether a loop goes on only as long as it finds something and takes it out, as one that empties a ring or takes a flag
 * down: where nothing comes any more it ends, so it waits for nothing.
 */
export function takesOut(loop: TypedStatement, linkage: Linkage): boolean {
  return guardsOf(loop, linkage).some(
    (guard) => isTakenInTurn(guard, loop, linkage) || givesWhatItTakes(guard, linkage),
  );
}

/** What has to be so for another turn. */
interface Guard {
  readonly subject: TypedExpression;
  /** Whether there is another turn where the subject is this. */
  goesOn(value: bigint): boolean;
}

/** What is moved on or counted, and what is given a fixed value. */
interface Taken {
  readonly counted: Set<Named>;
  readonly set: Map<Named, bigint>;
}

/** The loop's condition, and the conditions under which a turn comes past a way out of it. */
function guardsOf(loop: TypedStatement, linkage: Linkage): Guard[] {
  const guards: Guard[] = [];
  if ((loop.kind === "while" || loop.kind === "do" || loop.kind === "for") && loop.condition !== undefined) {
    guards.push(...guardsIn(loop.condition, true, linkage));
  }
  for (const statement of everyTurn(loop)) {
    if (statement.kind !== "if") continue;
    if (leavesAtOnce(statement.then)) guards.push(...guardsIn(statement.condition, false, linkage));
    else if (statement.otherwise !== undefined && leavesAtOnce(statement.otherwise)) {
      guards.push(...guardsIn(statement.condition, true, linkage));
    }
  }
  return guards;
}

/** Statements of the body that every turn comes to that is not the last one. */
function everyTurn(loop: TypedStatement): TypedStatement[] {
  const passed: TypedStatement[] = [];
  for (const statement of "body" in loop && loop.body !== undefined ? listed(loop.body) : []) {
    if (goesElsewhere(statement)) break;
    passed.push(statement);
  }
  return passed;
}

const listed = (statement: TypedStatement): readonly TypedStatement[] =>
  statement.kind === "block" ? statement.statements : [statement];

function goesElsewhere(statement: TypedStatement): boolean {
  if (statement.kind === "continue" || statement.kind === "goto") return true;
  return statementsIn(statement).some(goesElsewhere);
}

function leavesAtOnce(statement: TypedStatement): boolean {
  const last = listed(statement).at(-1);
  return last?.kind === "break" || last?.kind === "return";
}

/** What has to be so for a condition to come out as wanted; that of a function that does nothing but return it as well. */
function guardsIn(condition: TypedExpression, wanted: boolean, linkage: Linkage, depth = 0): Guard[] {
  switch (condition.kind) {
    case "convert":
      return guardsIn(condition.operand, wanted, linkage, depth);
    case "not":
      return guardsIn(condition.operand, !wanted, linkage, depth);
    case "logical":
      if ((condition.operator === "&&") !== wanted) return [];
      return [condition.left, condition.right].flatMap((side) => guardsIn(side, wanted, linkage, depth));
    case "compare": {
      const { left, right, operator } = condition;
      const limit = fixedValue(right);
      if (limit !== undefined) {
        return [{ subject: givenBy(left), goesOn: (value) => holds(operator, value, limit) === wanted }];
      }
      break;
    }
    default:
      break;
  }
  const guard: Guard = { subject: givenBy(condition), goesOn: (value) => (value !== 0n) === wanted };
  const returned = depth < deepest ? onlyReturnOf(guard.subject, linkage) : undefined;
  return returned === undefined ? [guard] : [guard, ...guardsIn(returned, wanted, linkage, depth + 1)];
}

/** Functions that are looked through for a condition, one inside the other. */
const deepest = 4;

function givenBy(expression: TypedExpression): TypedExpression {
  switch (expression.kind) {
    case "convert":
      return givenBy(expression.operand);
    case "assign":
      return givenBy(expression.value);
    case "comma":
      return givenBy(expression.right);
    default:
      return expression;
  }
}

function onlyReturnOf(call: TypedExpression, linkage: Linkage): TypedExpression | undefined {
  const symbol = functionCalled(call);
  const body = symbol === undefined ? undefined : linkage.definitionOf(symbol)?.body.statements;
  const [only, ...others] = body ?? [];
  return only?.kind === "return" && others.length === 0 ? only.value : undefined;
}

function fixedValue(expression: TypedExpression): bigint | undefined {
  switch (expression.kind) {
    case "integer":
      return expression.value;
    case "enumerator":
      return expression.enumerator.value;
    case "convert":
      return fixedValue(expression.operand);
    case "negate": {
      const value = fixedValue(expression.operand);
      return value === undefined ? undefined : -value;
    }
    default:
      return undefined;
  }
}

/** A turn moves on or takes down what the guard looks at. */
function isTakenInTurn({ subject, goesOn }: Guard, loop: TypedStatement, linkage: Linkage): boolean {
  const taken = takenInTurn(loop, subject, linkage);
  const named = namedBy(subject, linkage);
  const set = named === undefined ? undefined : taken.set.get(named);
  if (set !== undefined && !goesOn(set)) return true;
  if (taken.counted.size === 0) return false;
  const looksAt = lookedAtBy(subject, linkage);
  return [...taken.counted].some((each) => looksAt.has(each));
}

/** All that an expression names, and the functions that it calls. */
function lookedAtBy(expression: TypedExpression, linkage: Linkage): ReadonlySet<Named> {
  const names = new Set<Named>();
  const add = (part: TypedExpression): boolean => {
    const named = namedBy(part, linkage);
    if (named !== undefined) names.add(named);
    return true;
  };
  const addAll = (part: TypedExpression): void => {
    add(part);
    operandsOf(part).forEach(addAll);
  };
  addAll(expression);
  for (const symbol of reachedFrom(directEffects(expression).calls, linkage)) {
    const body = linkage.definitionOf(symbol)?.body;
    if (body !== undefined) walkStatement(body, { expression: add });
  }
  return names;
}

/** What the functions do that the guard itself calls is another matter: it hangs on what they return. */
function takenInTurn(loop: TypedStatement, guard: TypedExpression, linkage: Linkage): Taken {
  const taken: Taken = { counted: new Set(), set: new Map() };
  const seen = new Set(directEffects(guard).calls);
  for (const statement of everyTurn(loop)) collectTaken(statement, taken, linkage, seen);
  if (loop.kind === "for" && loop.step !== undefined) collectFrom(loop.step, taken, linkage, seen);
  return taken;
}

/** What a statement takes in any case, the functions included that it calls in any case. */
function collectTaken(
  statement: TypedStatement,
  taken: Taken,
  linkage: Linkage,
  seen: Set<FunctionSymbol>,
): void {
  for (const expression of expressionsIn(statement)) collectFrom(expression, taken, linkage, seen);
  // A block with interrupts off is a `for` of one turn.
  if (statement.kind !== "block" && statement.kind !== "for" && statement.kind !== "do") return;
  for (const inner of statementsIn(statement)) collectTaken(inner, taken, linkage, seen);
}

function collectFrom(
  expression: TypedExpression,
  taken: Taken,
  linkage: Linkage,
  seen: Set<FunctionSymbol>,
): void {
  const counted = countedBy(expression, linkage);
  if (counted !== undefined) taken.counted.add(counted);
  if (expression.kind === "assign") {
    const target = namedBy(expression.target, linkage);
    const value = fixedValue(expression.value);
    if (target !== undefined && value !== undefined) taken.set.set(target, value);
  }
  const called = functionCalled(expression);
  if (called !== undefined && !seen.has(called)) {
    seen.add(called);
    const body = linkage.definitionOf(called)?.body;
    if (body !== undefined) collectTaken(body, taken, linkage, seen);
  }
  for (const operand of inAnyCase(expression)) collectFrom(operand, taken, linkage, seen);
}

function inAnyCase(expression: TypedExpression): readonly TypedExpression[] {
  if (expression.kind === "logical") return [expression.left];
  return expression.kind === "conditional" ? [expression.condition] : operandsOf(expression);
}

/** The guard calls a function that takes something out of what it looks at before it returns what makes the loop go on. */
function givesWhatItTakes({ subject, goesOn }: Guard, linkage: Linkage): boolean {
  const symbol = functionCalled(subject);
  const body = symbol === undefined ? undefined : linkage.definitionOf(symbol)?.body;
  if (symbol === undefined || body === undefined) return false;
  const looksAt = conditionsIn(body, linkage);
  const takes = (statement: TypedStatement): boolean => {
    const taken: Taken = { counted: new Set(), set: new Map() };
    collectTaken(statement, taken, linkage, new Set([symbol]));
    return [...taken.counted, ...taken.set.keys()].some((each) => looksAt.has(each));
  };
  const isTakenFirst = (statements: readonly TypedStatement[], before: boolean): boolean => {
    let taken = before;
    for (const statement of statements) {
      taken ||= takes(statement);
      if (statement.kind === "return") {
        const value = statement.value === undefined ? undefined : fixedValue(statement.value);
        return taken || (value !== undefined && !goesOn(value));
      }
      if (!isTakenFirst(statementsIn(statement), taken)) return false;
    }
    return true;
  };
  return isTakenFirst(body.statements, false);
}

/** What the conditions of a body look at. */
function conditionsIn(body: TypedStatement, linkage: Linkage): ReadonlySet<Named> {
  const names = new Set<Named>();
  walkStatement(body, {
    statement(statement) {
      if (statement.kind === "if")
        for (const each of lookedAtBy(statement.condition, linkage)) names.add(each);
      return true;
    },
  });
  return names;
}
