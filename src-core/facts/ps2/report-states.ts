import { evaluate } from "../../reader/constants/evaluate.ts";
import type { TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import type { DataModel } from "../../reader/types/types.ts";
import type { Linkage } from "../walk/linkage.ts";
import { armsOf } from "../walk/switches.ts";
import { type Named, namedBy } from "./named.ts";

/** What is done in one state, and which states it may lead to. */
interface State {
  readonly statements: readonly TypedStatement[];
  readonly next: ReadonlySet<bigint>;
}

/** A variable that says which byte comes next, with its states in the order of the text. */
export interface StateMachine {
  readonly state: Named;
  readonly states: ReadonlyMap<bigint, State>;
}

/**
 * State machines in a body: a `switch`, or an `if` for each state, and a variable that nothing else in the body sets. What a
 * `default` or a last `else` does counts as the state that has no place of its own, if there is one. Left out where a
 * next state is not known.
 */
export function stateMachinesIn(
  body: TypedStatement,
  linkage: Linkage,
  model: DataModel,
): readonly StateMachine[] {
  const found: StateMachine[] = [];
  for (const [state, { arms, rest }] of armsByState(body, linkage, model)) {
    if (arms.size < 2) continue;
    const states = new Map<bigint, State>();
    let sets = 0;
    for (const [value, statements] of arms) {
      const changes = changesOf(state, statements, linkage);
      const next = changes.map((change) => nextStates(change, value, model));
      if (next.some((each) => each === undefined)) break;
      sets += changes.length;
      states.set(value, { statements, next: new Set(next.flatMap((each) => each ?? [])) });
    }
    if (states.size < arms.size) continue;
    const missing = [...states.values()].flatMap(({ next }) => [...next]).filter((value) => !arms.has(value));
    const [only] = new Set(missing);
    if (rest !== undefined) {
      const changes = changesOf(state, rest, linkage);
      sets += changes.length;
      const next = only === undefined ? [] : changes.map((change) => nextStates(change, only, model));
      if (only !== undefined && next.every((each) => each !== undefined))
        states.set(only, { statements: rest, next: new Set(next.flatMap((each) => each ?? [])) });
    }
    if (changesOf(state, [body], linkage).length === sets) found.push({ state, states });
  }
  return found;
}

interface Arms {
  readonly arms: Map<bigint, readonly TypedStatement[]>;
  /** What is done in any other state. */
  rest: readonly TypedStatement[] | undefined;
}

function armsByState(body: TypedStatement, linkage: Linkage, model: DataModel): ReadonlyMap<Named, Arms> {
  const found = new Map<Named, Arms>();
  const of = (state: Named): Arms => {
    const known = found.get(state) ?? { arms: new Map(), rest: undefined };
    found.set(state, known);
    return known;
  };
  walkStatement(body, {
    statement(statement) {
      if (statement.kind === "switch") {
        const state = namedBy(statement.condition, linkage);
        if (state === undefined) return true;
        const { arms } = of(state);
        for (const { labels, statements } of armsOf(statement.body)) {
          for (const label of labels) {
            if (label.kind === "default") of(state).rest = statements;
            else if (label.upTo === undefined) add(arms, evaluate(label.value, model), statements);
          }
        }
      } else if (statement.kind === "if" && statement.condition.kind === "compare") {
        const { operator, left, right } = statement.condition;
        const state = operator === "==" ? namedBy(left, linkage) : undefined;
        if (state === undefined) return true;
        const { arms } = of(state);
        add(arms, evaluate(right, model), [statement.then]);
        const { otherwise } = statement;
        if (otherwise !== undefined && otherwise.kind !== "if" && arms.size > 1) of(state).rest = [otherwise];
      }
      return true;
    },
    expression: () => false,
  });
  return found;
}

function add(
  arms: Map<bigint, readonly TypedStatement[]>,
  value: ReturnType<typeof evaluate>,
  statements: readonly TypedStatement[],
): void {
  if (value.kind !== "integer") return;
  arms.set(value.value, [...(arms.get(value.value) ?? []), ...statements]);
}

/** Expressions that set the state. */
function changesOf(
  state: Named,
  statements: readonly TypedStatement[],
  linkage: Linkage,
): readonly TypedExpression[] {
  const changes: TypedExpression[] = [];
  for (const statement of statements) {
    walkStatement(statement, {
      expression(expression) {
        if (changedBy(expression, linkage) === state) changes.push(expression);
        return true;
      },
    });
  }
  return changes;
}

/** What an expression sets, if it sets anything. */
export function changedBy(expression: TypedExpression, linkage: Linkage): Named | undefined {
  switch (expression.kind) {
    case "assign":
    case "compound-assign":
      return namedBy(expression.target, linkage);
    case "update":
      return namedBy(expression.operand, linkage);
    default:
      return undefined;
  }
}

/** The states that a change made in `from` may lead to; undefined where they are not known. */
function nextStates(change: TypedExpression, from: bigint, model: DataModel): readonly bigint[] | undefined {
  switch (change.kind) {
    case "update":
      return change.operator === "++" ? [from + 1n] : undefined;
    case "assign":
      return valuesOf(change.value, model);
    default:
      return undefined;
  }
}

function valuesOf(value: TypedExpression, model: DataModel): readonly bigint[] | undefined {
  if (value.kind === "convert") return valuesOf(value.operand, model);
  if (value.kind === "conditional") {
    const then = valuesOf(value.then, model);
    const otherwise = valuesOf(value.otherwise, model);
    return then && otherwise && [...then, ...otherwise];
  }
  const known = evaluate(value, model);
  return known.kind === "integer" ? [known.value] : undefined;
}

/**
 * The state in which the first byte of a report comes, where states lead round through as many as a report has bytes,
 * and nothing leads back before the third; undefined where there is no such ring.
 */
export function firstOfReport(
  { states }: StateMachine,
  lengths: ReadonlySet<number>,
  takesByte: (state: State) => boolean,
): State | undefined {
  for (const [value, first] of states) {
    if (isRingFrom(value, states, lengths, takesByte)) return first;
  }
  return undefined;
}

function isRingFrom(
  first: bigint,
  states: StateMachine["states"],
  lengths: ReadonlySet<number>,
  takesByte: (state: State) => boolean,
): boolean {
  const shortest = Math.min(...lengths);
  const longest = Math.max(...lengths);
  let at = first;
  for (let length = 1; length <= longest; length += 1) {
    const state = states.get(at);
    if (state === undefined || !takesByte(state)) return false;
    const onwards = [...state.next].filter((next) => next !== first);
    const [only, ...more] = onwards;
    if (state.next.has(first) && length < shortest) return false;
    if (only === undefined) return state.next.has(first) && lengths.has(length);
    if (more.length > 0 || only === at) return false;
    at = only;
  }
  return false;
}
