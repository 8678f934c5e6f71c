import { codeOf } from "../../model/commands.ts";
import { layouts, reportLayouts } from "../../model/report-layouts.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { At, FunctionSymbol, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf, walkStatement } from "../../reader/typed/walk.ts";
import { withoutConversions } from "../../reader/typed/without-conversions.ts";
import type { DataModel } from "../../reader/types/types.ts";
import type { Walk } from "../walk/events.ts";
import type { Linkage } from "../walk/linkage.ts";
import type { LineTraces } from "./line-traces.ts";
import { MouseBytes } from "./mouse-bytes.ts";
import { type Named, namedBy } from "./named.ts";
import type { CollectedReport, SendSequence } from "./ps2-facts.ts";
import { firstOfReport, stateMachinesIn } from "./report-states.ts";

/** Bytes of a report from the mouse. */
const lengths: ReadonlySet<number> = new Set(
  reportLayouts.filter(({ side }) => side === "ps2").map(({ rows }) => rows.length),
);

/** The bits of a first byte that tell it from others: those that are always 1, and the overflow bits. */
const tellingBits = (layouts["ps2-standard"].rows[0] ?? "")
  .split(/\s+/)
  .reduce((mask, slot, index) => (slot === "1" || slot.endsWith("!") ? mask | (1 << (7 - index)) : mask), 0);

/**
 * Places where the first byte of a report is kept, while nothing in the project tests a bit of it that tells it from others,
 * and nothing starts again before a report is whole. Reports are collected by a counter into an array, or by a state for
 * each byte.
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
  const bytes = new MouseBytes(
    lines,
    linkage,
    bodies.map(({ body }) => body),
    handled,
  );
  const found: CollectedReport[] = [];
  for (const { symbol, body } of bodies) {
    if (!mayCollect(body)) continue;
    for (const { by, span } of [
      ...byCounter(body, { program, linkage, bytes }),
      ...byState(body, { program, linkage, bytes }),
    ]) {
      const isStartedElsewhere = bodies.some(
        (other) => other.symbol !== symbol && startsAgain(other.symbol, other.body, by, linkage),
      );
      if (!isStartedElsewhere) found.push({ span });
    }
  }
  if (found.length === 0 || bodies.some(({ body }) => testsFirstByte(body, program.model))) return [];
  return found;
}

const collecting = new WeakMap<TypedStatement, boolean>();

/** Whether a body puts anything into an array or chooses by a value; kept with the body, which never changes. */
function mayCollect(body: TypedStatement): boolean {
  let may = collecting.get(body);
  if (may === undefined) {
    may = false;
    let choices = 0;
    walkStatement(body, {
      statement(statement) {
        if (statement.kind === "if" && statement.condition.kind === "compare") choices += 1;
        if (statement.kind === "switch" || choices > 1) may = true;
        return may !== true;
      },
      expression(expression) {
        if (expression.kind === "index") may = true;
        return may !== true;
      },
    });
    collecting.set(body, may);
  }
  return may;
}

type Assignment = Extract<TypedExpression, { kind: "assign" }>;

interface Surroundings {
  readonly program: Program;
  readonly linkage: Linkage;
  readonly bytes: MouseBytes;
}

/** Where the first byte is kept, and what says which byte it is. */
interface Collected {
  readonly by: Named;
  readonly span: CollectedReport["span"];
}

/** Bytes put into an array by a counter that starts again at the length of a report, and nowhere else. */
function* byCounter(body: TypedStatement, { program, linkage, bytes }: Surroundings): Generator<Collected> {
  const stores: { readonly counter: Named; readonly at: At; readonly isOfMouse: () => boolean }[] = [];
  const compared = new Set<Named>();
  const counted = new Set<Named>();
  const counterOf = (expression: TypedExpression): Named | undefined => {
    const inner = withoutConversions(expression);
    return namedBy(inner.kind === "update" ? inner.operand : inner, linkage);
  };
  walkStatement(body, {
    expression(expression) {
      if (expression.kind === "assign" && expression.target.kind === "index") {
        const { target, value } = expression;
        const counter = counterOf(target.index);
        if (counter !== undefined) stores.push({ counter, at: target.at, isOfMouse: () => bytes.are(value) });
      } else if (expression.kind === "call" || expression.kind === "method-call") {
        for (const argument of expression.arguments) {
          const given = withoutConversions(argument);
          if (given.kind !== "address" || given.operand.kind !== "index") continue;
          const counter = counterOf(given.operand.index);
          if (counter !== undefined)
            stores.push({ counter, at: given.at, isOfMouse: () => bytes.areGivenBy(expression) });
        }
      } else if (expression.kind === "compare") {
        const limit = evaluate(expression.right, program.model);
        const counter = counterOf(expression.left);
        if (counter !== undefined && limit.kind === "integer" && lengths.has(Number(limit.value)))
          compared.add(counter);
      } else if (expression.kind === "update" && expression.operator === "++") {
        const counter = counterOf(expression.operand);
        if (counter !== undefined) counted.add(counter);
      }
      return true;
    },
  });
  for (const { counter, at, isOfMouse } of stores) {
    if (!compared.has(counter) || !counted.has(counter) || !isOfMouse()) continue;
    const starts = settingsOf(body, counter, linkage).filter(
      ({ value }) => withoutConversions(value).kind === "integer",
    );
    if (starts.length !== 1) continue;
    yield { by: counter, span: visibleRange(at.first, at.last) };
    return;
  }
}

/** Bytes that each have a state of their own, which lead from one to the next and round. */
function* byState(body: TypedStatement, { program, linkage, bytes }: Surroundings): Generator<Collected> {
  for (const machine of stateMachinesIn(body, linkage, program.model)) {
    const first = firstOfReport(machine, lengths, ({ statements }) =>
      statements.some((statement) => takenIn(statement, bytes) !== undefined),
    );
    const at = first?.statements
      .map((statement) => takenIn(statement, bytes))
      .find((each) => each !== undefined);
    if (at !== undefined) yield { by: machine.state, span: visibleRange(at.first, at.last) };
  }
}

/** Where a byte of the mouse is kept or handed on. */
function takenIn(statement: TypedStatement, bytes: MouseBytes): At | undefined {
  let at: At | undefined;
  walkStatement(statement, {
    expression(expression) {
      const isTaken =
        expression.kind === "assign"
          ? bytes.are(expression.value)
          : (expression.kind === "call" || expression.kind === "method-call") &&
            expression.arguments.some((argument) => bytes.are(argument));
      if (isTaken) at ??= expression.at;
      return at === undefined;
    },
  });
  return at;
}

/** Sets what says which byte comes next, at a time that has nothing to do with the byte. */
function startsAgain(symbol: FunctionSymbol, body: TypedStatement, named: Named, linkage: Linkage): boolean {
  const starts = symbol.special === "constructor" || startName.test(symbol.name);
  if (!starts) return settingsOf(body, named, linkage).length > 0;
  let found = false;
  walkStatement(body, {
    statement(statement) {
      const repeats = statement.kind === "while" || statement.kind === "do" || statement.kind === "for";
      if (repeats && settingsOf(statement.body, named, linkage).length > 0) found = true;
      return !found;
    },
  });
  return found;
}

/** A function that starts everything starts the counter as well. */
const startName = /^(main|setup)$|init|begin|start|set_?up/i;

function settingsOf(body: TypedStatement, named: Named, linkage: Linkage): readonly Assignment[] {
  const settings: Assignment[] = [];
  walkStatement(body, {
    expression(expression) {
      if (expression.kind === "assign" && namedBy(expression.target, linkage) === named)
        settings.push(expression);
      return true;
    },
  });
  return settings;
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
      const left = withoutConversions(condition.left);
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
  if (expression.kind === "dereference" && withoutConversions(expression.operand).kind === "integer")
    return true;
  return operandsOf(expression).some(namesRegister);
}
