import type { TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import type { LoopParts } from "./counters.ts";
import { directEffects } from "./effects.ts";
import { visitExpression, visitStatement } from "./visit.ts";

/** What the text of a loop says of how it should be walked. */
interface LoopPlan {
  /** Its condition is always true, or it has none. */
  readonly endless: boolean;
  /** `do { ... } while (0)` with nothing in it that leaves it: a block. */
  readonly isBlock: boolean;
  /** It does nothing but count. */
  readonly idle: boolean;
  /** It changes what its condition looks at, so that turn by turn it may come to an end. */
  readonly counts: boolean;
  /** The body can be left by `break`, `return` or `goto`. */
  readonly leaves: boolean;
  /** The condition is one comparison and not several joined by `&&`. */
  readonly isOneCondition: boolean;
}

const plans = new WeakMap<TypedStatement, LoopPlan>();

export function loopPlan(parts: LoopParts): LoopPlan {
  let plan = plans.get(parts.statement);
  if (plan === undefined) {
    const constant = parts.condition === undefined ? true : constantTruth(parts.condition);
    const endless = constant === true;
    const leaves = leavesIn(parts.body, "loop");
    plan = {
      endless,
      isBlock: constant === false && parts.tested === "after" && !breaksIn(parts.body),
      idle: !endless && isIdle(parts.body),
      counts: !endless && changesItsCondition(parts),
      leaves,
      isOneCondition: parts.condition !== undefined && parts.condition.kind !== "logical",
    };
    plans.set(parts.statement, plan);
  }
  return plan;
}

/** What a condition that is written as a constant says. */
function constantTruth(condition: TypedExpression): boolean | undefined {
  let constant = true;
  let value: bigint | undefined;
  visitExpression(condition, (part) => {
    if (part.kind === "integer") value = part.value;
    else if (part.kind !== "convert") constant = false;
  });
  return constant && value !== undefined ? value !== 0n : undefined;
}

/** Nothing but counting: an empty body, or one with instructions that only take time. */
function isIdle(body: TypedStatement): boolean {
  switch (body.kind) {
    case "empty":
    case "assembly":
      return true;
    case "block":
      return body.statements.every(isIdle);
    default:
      return false;
  }
}

function changesItsCondition(parts: LoopParts): boolean {
  const { condition } = parts;
  if (condition === undefined) return false;
  const changed = new Set<unknown>();
  for (const code of [condition, parts.step, parts.body, parts.declared]) {
    if (code === undefined) continue;
    const effects = directEffects(code);
    for (const variable of effects.variables) changed.add(variable);
    for (const field of effects.fields) changed.add(field);
  }
  let changes = false;
  visitExpression(condition, (part) => {
    if (part.kind === "variable" && changed.has(part.variable)) changes = true;
    if (part.kind === "member" && changed.has(part.field)) changes = true;
  });
  return changes;
}

/** Whether a `break` or `continue` of the loop itself stands in it. */
function breaksIn(statement: TypedStatement): boolean {
  switch (statement.kind) {
    case "break":
    case "continue":
      return true;
    case "block":
      return statement.statements.some(breaksIn);
    case "if":
      return breaksIn(statement.then) || (statement.otherwise !== undefined && breaksIn(statement.otherwise));
    case "switch":
      return breaksIn(statement.body);
    case "case":
    case "default":
    case "label":
      return statement.body !== undefined && breaksIn(statement.body);
    default:
      return false;
  }
}

/** Whether some statement leaves the loop; a `break` inside an inner loop or `switch` does not. */
function leavesIn(statement: TypedStatement, within: "loop" | "inner"): boolean {
  switch (statement.kind) {
    case "break":
      return within === "loop";
    case "return":
    case "goto":
      return true;
    case "block":
      return statement.statements.some((part) => leavesIn(part, within));
    case "if":
      return (
        leavesIn(statement.then, within) ||
        (statement.otherwise !== undefined && leavesIn(statement.otherwise, within))
      );
    case "while":
    case "do":
    case "for":
    case "range-for":
    case "switch":
      return leavesIn(statement.body, "inner");
    case "case":
    case "default":
    case "label":
      return statement.body !== undefined && leavesIn(statement.body, within);
    default:
      return hasStatementValue(statement);
  }
}

/** A `return` may hide in a statement that stands inside an expression. */
function hasStatementValue(statement: TypedStatement): boolean {
  let found = false;
  visitStatement(statement, (part) => {
    if (part.kind === "statement-value" && leavesIn(part.body, "inner")) found = true;
  });
  return found;
}
