import type { TypedStatement } from "../../reader/typed/nodes.ts";
import { statementsIn } from "../../reader/typed/walk.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { endedBlock, jump, lowerStatement, orStop, tested, tick, writtenOut } from "./statements.ts";
import { holdsLabel, holdsOddSwitch, type Label, labelText, type Switch } from "./switches.ts";
import { wholeExpression } from "./temporaries.ts";
import { lowerValue } from "./values.ts";

/**
 * Functions with `goto`, or with `case` inside of other statements, become numbered blocks in a loop:
 * `L:for(;;)switch(pc){case 0:...}`. Only statements that hold a label are taken apart; blocks fall through to the
 * next one, as the source does.
 */
export function inBlocks(scope: FunctionScope, body: TypedStatement): string {
  scope.declared.push("pc");
  const start = nextBlock(scope);
  const code = taken(scope, body);
  return `pc=${start};L:for(;;)switch(pc){case ${start}:${code}break L;}`;
}

/** Numbers all labels of a function, so that jumps forward know them. `around` are the statements that hold this one. */
export function numberLabels(
  scope: FunctionScope,
  statement: TypedStatement,
  around: readonly TypedStatement[] = [],
): void {
  if (statement.kind === "label")
    scope.labels.set(statement.name, {
      number: nextBlock(scope),
      around: new Set(around),
      live: undefined,
    });
  for (const inner of statementsIn(statement)) numberLabels(scope, inner, [...around, statement]);
}

function nextBlock(scope: FunctionScope): number {
  scope.blocks += 1;
  return scope.blocks;
}

function taken(scope: FunctionScope, statement: TypedStatement): string {
  if (!holdsLabel(statement) && !holdsOddSwitch(statement)) return lowerStatement(scope, statement);
  return orStop(scope, () => takenApart(scope, statement));
}

function takenApart(scope: FunctionScope, statement: TypedStatement): string {
  switch (statement.kind) {
    case "block":
      return endedBlock(scope, statement, () =>
        statement.statements.map((inner) => taken(scope, inner)).join(""),
      );
    case "label": {
      const label = scope.labels.get(statement.name);
      const number = label?.number ?? nextBlock(scope);
      if (label !== undefined) label.live = scope.destroyed.map(({ steps }) => steps.length);
      return `case ${number}:${tick(scope, statement)}${statement.body === undefined ? "" : taken(scope, statement.body)}`;
    }
    case "case":
    case "default":
      return caseBlock(scope, statement);
    case "if":
      return endedBlock(scope, statement, () => ifBlocks(scope, statement));
    case "while":
    case "do":
    case "for":
      return endedBlock(scope, statement, () => loopBlocks(scope, statement));
    case "range-for":
      return takenApart(scope, writtenOut(statement));
    case "switch":
      return switchBlocks(scope, statement);
    default:
      throw new CannotLower("a label in this statement", statement.at);
  }
}

function caseBlock(scope: FunctionScope, statement: Label): string {
  const number = scope.cases.get(statement);
  if (number === undefined) throw new CannotLower("a `case` outside of a `switch`", statement.at);
  return `case ${number}:${statement.body === undefined ? "" : taken(scope, statement.body)}`;
}

function ifBlocks(scope: FunctionScope, statement: Extract<TypedStatement, { kind: "if" }>): string {
  const init = statement.init === undefined ? "" : lowerStatement(scope, statement.init);
  const otherwise = nextBlock(scope);
  const head = `${init}if(!${tested(scope, statement.condition)})${jump(otherwise)}`;
  const then = taken(scope, statement.then);
  if (statement.otherwise === undefined) return `${head}${then}case ${otherwise}:`;
  const end = nextBlock(scope);
  return `${head}${then}${jump(end)}case ${otherwise}:${taken(scope, statement.otherwise)}case ${end}:`;
}

function loopBlocks(
  scope: FunctionScope,
  statement: Extract<TypedStatement, { kind: "while" | "do" | "for" }>,
): string {
  const head = nextBlock(scope);
  const next = nextBlock(scope);
  const end = nextBlock(scope);
  const held = [scope.breakTo, scope.continueTo, scope.breakDepth, scope.continueDepth] as const;
  const init =
    statement.kind === "for" && statement.init !== undefined ? lowerStatement(scope, statement.init) : "";
  if (statement.kind === "while" && statement.declared !== undefined)
    throw new CannotLower("a label in a loop whose condition declares", statement.at);
  scope.breakTo = end;
  scope.continueTo = next;
  scope.breakDepth = scope.destroyed.length;
  scope.continueDepth = scope.destroyed.length;
  const body = taken(scope, statement.body);
  [scope.breakTo, scope.continueTo, scope.breakDepth, scope.continueDepth] = held;
  const test =
    statement.condition === undefined ? "" : `if(!${tested(scope, statement.condition)})${jump(end)}`;
  const count = tick(scope, statement);
  if (statement.kind === "do")
    return `case ${head}:${count}${body}case ${next}:${test}${jump(head)}case ${end}:`;
  const turned = statement.kind === "for" ? statement.step : undefined;
  const step = turned === undefined ? "" : `${wholeExpression(scope, () => lowerValue(scope, turned))};`;
  return `${init}case ${head}:${test}${count}${body}case ${next}:${step}${jump(head)}case ${end}:`;
}

function switchBlocks(scope: FunctionScope, statement: Switch): string {
  const end = nextBlock(scope);
  const labels: Label[] = [];
  collect(statement.body, labels);
  for (const label of labels) scope.cases.set(label, nextBlock(scope));
  const hasDefault = labels.some(({ kind }) => kind === "default");
  const arms = labels.map((label) => `${labelText(scope, label)}${jump(scope.cases.get(label) ?? end)}`);
  const otherwise = hasDefault ? "" : `default:${jump(end)}`;
  const value = wholeExpression(scope, () => lowerValue(scope, statement.condition));
  const dispatch = `switch(${value}){${arms.join("")}${otherwise}}`;
  const held = [scope.breakTo, scope.breakDepth] as const;
  scope.breakTo = end;
  scope.breakDepth = scope.destroyed.length;
  const body = taken(scope, statement.body);
  [scope.breakTo, scope.breakDepth] = held;
  return `${dispatch}${body}case ${end}:`;
}

/** The labels that belong to this `switch`, not to one inside of it. */
function collect(statement: TypedStatement | undefined, labels: Label[]): void {
  if (statement === undefined) return;
  switch (statement.kind) {
    case "case":
    case "default":
      labels.push(statement);
      collect(statement.body, labels);
      return;
    case "block":
      for (const inner of statement.statements) collect(inner, labels);
      return;
    case "if":
      collect(statement.then, labels);
      collect(statement.otherwise, labels);
      return;
    case "while":
    case "do":
    case "for":
    case "range-for":
    case "label":
      collect(statement.body, labels);
      return;
    default:
      return;
  }
}
