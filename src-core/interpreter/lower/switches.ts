import type { TypedStatement } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { endedBlock, lowerStatement } from "./statements.ts";
import { wholeExpression } from "./temporaries.ts";
import { lowerValue } from "./values.ts";

export type Switch = Extract<TypedStatement, { kind: "switch" }>;
export type Label = Extract<TypedStatement, { kind: "case" | "default" }>;

/** Most values of a `case` range that are written out. */
const widestRange = 1024n;

/** Whether all its labels stand directly in its body, so that JavaScript's own `switch` says the same. */
export function isPlainSwitch({ body }: Switch): boolean {
  const statements = body.kind === "block" ? body.statements : [body];
  return statements.every((statement) => !holdsLabel(unlabelled(statement)));
}

function unlabelled(statement: TypedStatement | undefined): TypedStatement | undefined {
  let inner = statement;
  while (inner?.kind === "case" || inner?.kind === "default") inner = inner.body;
  return inner;
}

/** Whether a `case` or `default` of the switch around it, or a label, stands in a statement. */
export function holdsLabel(statement: TypedStatement | undefined, inSwitch = false): boolean {
  if (statement === undefined) return false;
  switch (statement.kind) {
    case "case":
    case "default":
      return !inSwitch || holdsLabel(statement.body, inSwitch);
    case "label":
      return true;
    case "block":
      return statement.statements.some((inner) => holdsLabel(inner, inSwitch));
    case "if":
      return holdsLabel(statement.then, inSwitch) || holdsLabel(statement.otherwise, inSwitch);
    case "while":
    case "do":
    case "for":
    case "range-for":
      return holdsLabel(statement.body, inSwitch);
    case "switch":
      return holdsLabel(statement.body, true);
    default:
      return false;
  }
}

/** Whether a `switch` in it has labels inside of other statements. */
export function holdsOddSwitch(statement: TypedStatement): boolean {
  let holds = false;
  walkStatement(statement, {
    expression: () => false,
    statement: (inner) => {
      if (inner.kind === "switch" && !isPlainSwitch(inner)) holds = true;
      return !holds;
    },
  });
  return holds;
}

export function lowerSwitch(scope: FunctionScope, statement: Switch): string {
  const held = [scope.breakTo, scope.breakDepth] as const;
  const value = wholeExpression(scope, () => lowerValue(scope, statement.condition));
  scope.breakTo = "own";
  scope.breakDepth = scope.destroyed.length;
  const statements = statement.body.kind === "block" ? statement.body.statements : [statement.body];
  const first = statements.findIndex(({ kind }) => kind === "case" || kind === "default");
  // What stands before the first label is never run; it only declares. Nor does a label follow an object with a
  // destructor (C++11 6.7p3), so that those declared directly in here end with the last of the labels.
  const body = endedBlock(scope, statement.body, () => {
    for (const inner of first < 0 ? statements : statements.slice(0, first)) lowerStatement(scope, inner);
    return first < 0
      ? ""
      : statements
          .slice(first)
          .map((inner) => labelled(scope, inner))
          .join("");
  });
  [scope.breakTo, scope.breakDepth] = held;
  return `switch(${value}){${body}}`;
}

function labelled(scope: FunctionScope, statement: TypedStatement): string {
  let labels = "";
  let inner: TypedStatement | undefined = statement;
  while (inner?.kind === "case" || inner?.kind === "default") {
    labels += labelText(scope, inner);
    inner = inner.body;
  }
  return labels + (inner === undefined ? "" : lowerStatement(scope, inner));
}

/** `case 1:case 2:` or `default:`. */
export function labelText(scope: FunctionScope, label: Label): string {
  if (label.kind === "default") return "default:";
  if (label.upTo === undefined) return `case ${lowerValue(scope, label.value)}:`;
  const from = constantOf(lowerValue(scope, label.value));
  const to = constantOf(lowerValue(scope, label.upTo));
  if (from === undefined || to === undefined || to - from > widestRange)
    throw new CannotLower("this range of `case`", label.at);
  let text = "";
  for (let value = from; value <= to; value += 1n) text += `case ${value}:`;
  return text;
}

function constantOf(code: string): bigint | undefined {
  const digits = /^\(?(-?\d+)\)?$/.exec(code)?.[1];
  return digits === undefined ? undefined : BigInt(digits);
}
