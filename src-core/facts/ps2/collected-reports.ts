import { codeOf } from "../../model/commands.ts";
import { layouts, reportLayouts } from "../../model/report-layouts.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { FunctionSymbol, TypedExpression, TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf, walkExpression, walkStatement } from "../../reader/typed/walk.ts";
import type { DataModel, Field } from "../../reader/types/types.ts";
import type { Walk } from "../walk/events.ts";
import type { Linkage } from "../walk/linkage.ts";
import { callersOf } from "./data-code.ts";
import type { LineTraces } from "./line-traces.ts";
import type { CollectedReport, SendSequence } from "./ps2-facts.ts";

type Named = Variable | Field;

/** Bytes of a report from the mouse. */
const lengths: ReadonlySet<bigint> = new Set(
  reportLayouts.filter(({ side }) => side === "ps2").map(({ rows }) => BigInt(rows.length)),
);

/** The bits of a first byte that tell it from others: those that are always 1, and the overflow bits. */
const tellingBits = (layouts["ps2-standard"].rows[0] ?? "")
  .split(/\s+/)
  .reduce((mask, slot, index) => (slot === "1" || slot.endsWith("!") ? mask | (1 << (7 - index)) : mask), 0);

/**
 * Places where bytes of the mouse are put into an array by a counter that starts again at the length of a report, while
 * nothing in the project tests a bit of the first byte that tells it from others, and nothing else starts the counter again.
 */
export function collectedReports(
  program: Program,
  walk: Walk,
  lines: LineTraces,
  sequences: readonly SendSequence[],
): CollectedReport[] {
  if (lines.handlers.length === 0) return [];
  // Where each report is asked for, it begins anew by itself.
  const polls = sequences.some(({ bytes }) => bytes.some(({ byte }) => byte === codeOf("read data")));
  if (polls) return [];
  const { linkage } = walk;
  const all = [...new Set(program.functions.map((symbol) => linkage.definingSymbol(symbol)))];
  const bodies = all.flatMap((symbol) => {
    const body = linkage.definitionOf(symbol)?.body;
    return body === undefined ? [] : [{ symbol, body }];
  });
  const handled = new Set(bodies.filter(({ body }) => lines.areUsedIn(body)).map(({ symbol }) => symbol));
  const near = new Set<FunctionSymbol>([...handled, ...callersOf(handled, all, linkage)]);
  const found: CollectedReport[] = [];
  for (const { symbol, body } of bodies) {
    if (!near.has(symbol)) continue;
    const collected = collectedIn(body, { program, lines, linkage, handled });
    if (collected === undefined) continue;
    const isStartedElsewhere = bodies.some(
      (other) =>
        other.symbol !== symbol &&
        !startName.test(other.symbol.name) &&
        startsAgain(other.body, collected.counter, linkage),
    );
    if (!isStartedElsewhere) found.push({ span: collected.span });
  }
  if (found.length === 0 || bodies.some(({ body }) => testsFirstByte(body, program.model))) return [];
  return found;
}

/** A function that starts everything starts the counter as well. */
const startName = /^(main|setup)$|init|begin|start|set_?up/i;

interface Surroundings {
  readonly program: Program;
  readonly lines: LineTraces;
  readonly linkage: Linkage;
  readonly handled: ReadonlySet<FunctionSymbol>;
}

function collectedIn(
  body: TypedStatement,
  { program, lines, linkage, handled }: Surroundings,
): { readonly counter: Named; readonly span: CollectedReport["span"] } | undefined {
  const stores: { readonly counter: Named; readonly index: TypedExpression }[] = [];
  const compared = new Set<Named>();
  const counted = new Set<Named>();
  const counterOf = (expression: TypedExpression): Named | undefined => {
    const inner = bare(expression);
    const named = namedBy(inner.kind === "update" ? inner.operand : inner);
    return named && canonical(named, linkage);
  };
  walkStatement(body, {
    expression(expression) {
      if (expression.kind === "assign" && expression.target.kind === "index") {
        const counter = counterOf(expression.target.index);
        if (counter !== undefined && isFromMouse(expression.value, lines, linkage, handled))
          stores.push({ counter, index: expression.target });
      } else if (expression.kind === "call" || expression.kind === "method-call") {
        const symbol = expression.kind === "method-call" ? expression.method : calledBy(expression);
        if (symbol === undefined || !handled.has(linkage.definingSymbol(symbol))) return true;
        for (const argument of expression.arguments) {
          const given = bare(argument);
          if (given.kind !== "address" || given.operand.kind !== "index") continue;
          const counter = counterOf(given.operand.index);
          if (counter !== undefined) stores.push({ counter, index: given });
        }
      } else if (expression.kind === "compare") {
        const limit = evaluate(expression.right, program.model);
        const counter = counterOf(expression.left);
        if (counter !== undefined && limit.kind === "integer" && lengths.has(limit.value))
          compared.add(counter);
      } else if (expression.kind === "update" && expression.operator === "++") {
        const counter = counterOf(expression.operand);
        if (counter !== undefined) counted.add(counter);
      }
      return true;
    },
  });
  for (const { counter, index } of stores) {
    if (!compared.has(counter) || !counted.has(counter)) continue;
    if (startsAgainCount(body, counter, linkage) !== 1) continue;
    return { counter, span: visibleRange(index.at.first, index.at.last) };
  }
  return undefined;
}

/** A value that a handler of the clock wrote, or that a function gives which uses such a value; one step of assignment. */
function isFromMouse(
  value: TypedExpression,
  lines: LineTraces,
  linkage: Linkage,
  handled: ReadonlySet<FunctionSymbol>,
): boolean {
  let found = false;
  let isRegister = false;
  walkExpression(value, {
    expression(part) {
      if (part.kind === "variable") {
        const variable = linkage.canonical(part.variable);
        found ||=
          lines.isHandled(variable, undefined) ||
          variable.storage === "local" ||
          variable.storage === "parameter";
      } else if (part.kind === "member")
        found ||= lines.isHandled(undefined, linkage.canonicalField(part.field));
      else if (part.kind === "method-call") found ||= handled.has(linkage.definingSymbol(part.method));
      else if (part.kind === "call") {
        const symbol = calledBy(part);
        found ||= symbol !== undefined && handled.has(linkage.definingSymbol(symbol));
      } else if (part.kind === "dereference" && bare(part.operand).kind === "integer") isRegister = true;
      return true;
    },
  });
  return found && !isRegister;
}

function calledBy(call: Extract<TypedExpression, { kind: "call" }>): FunctionSymbol | undefined {
  return call.callee.kind === "function" ? call.callee.function : undefined;
}

function startsAgain(body: TypedStatement, counter: Named, linkage: Linkage): boolean {
  return startsAgainCount(body, counter, linkage) > 0;
}

/** How often the counter is set to 0. */
function startsAgainCount(body: TypedStatement, counter: Named, linkage: Linkage): number {
  let times = 0;
  walkStatement(body, {
    expression(expression) {
      if (expression.kind !== "assign") return true;
      const named = namedBy(bare(expression.target));
      const value = bare(expression.value);
      if (named !== undefined && canonical(named, linkage) === counter && value.kind === "integer")
        times += 1;
      return true;
    },
  });
  return times;
}

/** Whether a condition tests a bit that tells a first byte from others; bits of registers are something else. */
function testsFirstByte(body: TypedStatement, model: DataModel): boolean {
  let found = false;
  walkStatement(body, {
    statement(statement) {
      const decides =
        statement.kind === "if" ||
        statement.kind === "while" ||
        statement.kind === "do" ||
        statement.kind === "return" ||
        statement.kind === "variables";
      if (decides && expressionsIn(statement).some((each) => tests(each, model))) found = true;
      return !found;
    },
    expression(expression) {
      if (expression.kind === "conditional" && tests(expression.condition, model)) found = true;
      if (expression.kind === "assign" && tests(expression.value, model)) found = true;
      return !found;
    },
  });
  return found;
}

function tests(condition: TypedExpression, model: DataModel): boolean {
  switch (condition.kind) {
    case "logical":
    case "compare":
      return tests(condition.left, model) || tests(condition.right, model);
    case "not":
    case "convert":
      return tests(condition.operand, model);
    case "arithmetic": {
      if (condition.operator !== "&" || namesRegister(condition.left)) return false;
      const mask = evaluate(condition.right, model);
      if (mask.kind !== "integer") return false;
      const left = bare(condition.left);
      if (mask.value === 1n && left.kind === "arithmetic" && left.operator === ">>") {
        const shift = evaluate(left.right, model);
        return shift.kind === "integer" && (tellingBits & (1 << Number(shift.value))) !== 0;
      }
      const bits = Number(mask.value);
      return bits !== 0 && (bits & ~tellingBits) === 0;
    }
    default:
      return false;
  }
}

function namesRegister(expression: TypedExpression): boolean {
  if (expression.kind === "dereference" && bare(expression.operand).kind === "integer") return true;
  return operandsOf(expression).some(namesRegister);
}

function bare(expression: TypedExpression): TypedExpression {
  return expression.kind === "convert" ? bare(expression.operand) : expression;
}

function namedBy(expression: TypedExpression): Named | undefined {
  if (expression.kind === "variable") return expression.variable;
  return expression.kind === "member" ? expression.field : undefined;
}

function canonical(named: Named, linkage: Linkage): Named {
  return "storage" in named ? linkage.canonical(named) : linkage.canonicalField(named);
}
