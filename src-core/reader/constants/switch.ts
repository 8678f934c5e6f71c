import type { TypedStatement, Variable } from "../typed/nodes.ts";
import { evaluateIn, type Run } from "./evaluate.ts";
import { execute, next, type Outcome } from "./statements.ts";
import { unknown, type Value } from "./value.ts";

type Switch = Extract<TypedStatement, { kind: "switch" }>;

/** Labels of one statement, which may stand behind each other: `case 1: case 2: ...`. */
function labelMatches(run: Run, statement: TypedStatement, value: bigint): boolean {
  if (statement.kind !== "case" && statement.kind !== "default") return false;
  if (statement.kind === "case") {
    const from = evaluateIn(run, statement.value).value;
    const upTo = statement.upTo === undefined ? from : evaluateIn(run, statement.upTo).value;
    if (from.kind === "integer" && upTo.kind === "integer" && value >= from.value && value <= upTo.value) {
      return true;
    }
  }
  return statement.body !== undefined && labelMatches(run, statement.body, value);
}

function isDefault(statement: TypedStatement): boolean {
  if (statement.kind === "default") return true;
  return statement.kind === "case" && statement.body !== undefined && isDefault(statement.body);
}

/** Runs a `switch` whose labels stand directly in its block. */
export function runSwitch(run: Run, locals: Map<Variable, Value>, statement: Switch): Outcome {
  const { value } = evaluateIn(run, statement.condition);
  if (value.kind !== "integer") return value.kind === "unknown" ? value : unknown("not an integer");
  if (statement.body.kind !== "block") return unknown("a switch without a block");
  const { statements } = statement.body;
  let from = statements.findIndex((candidate) => labelMatches(run, candidate, value.value));
  if (from < 0) from = statements.findIndex(isDefault);
  if (from < 0) return next;
  for (const each of statements.slice(from)) {
    const outcome = execute(run, locals, each);
    if (outcome.kind === "break") return next;
    if (outcome.kind !== "next") return outcome;
  }
  return next;
}
