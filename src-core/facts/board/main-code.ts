import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { type Access, usesIn } from "./accesses.ts";
import { namedCallOf } from "./calls.ts";
import { interruptSwitchOf, macrosOf } from "./interrupts-off.ts";

/** Statements of a function from which something starts to run. */
export interface Start {
  readonly function: FunctionSymbol;
  readonly statements: readonly TypedStatement[];
}

export function startOf(symbol: FunctionSymbol): Start {
  return { function: symbol, statements: symbol.definition?.body.statements ?? [] };
}

/** All that is read and written from `starts` on, calls followed; a function counts once. */
export function accessesFrom(starts: readonly Start[], program: Program): readonly Access[] {
  const accesses: Access[] = [];
  const seenWithInterrupts = new Set<FunctionSymbol>();
  const seenWithout = new Set<FunctionSymbol>();
  const visit = (start: Start, off: boolean) => {
    const uses = usesIn(start.function, start.statements);
    for (const access of uses.accesses)
      accesses.push(off && !access.interruptsOff ? { ...access, interruptsOff: true } : access);
    for (const call of uses.calls) {
      const callee = program.definitionOf(call.callee);
      if (callee === undefined) continue;
      const inside = off || call.interruptsOff;
      if (seenWithInterrupts.has(callee) || (inside && seenWithout.has(callee))) continue;
      (inside ? seenWithout : seenWithInterrupts).add(callee);
      visit(startOf(callee), inside);
    }
  };
  for (const start of starts) visit(start, false);
  return accesses;
}

/**
 * What of `symbol` runs once interrupts can come: all but the statements before the first one that lets them,
 * which may stand in a function called on the way. All of it where no such statement is found.
 */
export function onceInterruptsCome(symbol: FunctionSymbol, program: Program): readonly Start[] {
  const starts = startsAfterSwitch(symbol, program, new Set()) ?? [startOf(symbol)];
  return starts.map((start) => ({
    ...start,
    statements: start.statements.filter((statement) => !isPlainAssignment(statement)),
  }));
}

/** `pin = 3;` in a function that runs once: late, but the handler finds it. */
function isPlainAssignment(statement: TypedStatement): boolean {
  return statement.kind === "expression" && statement.expression.kind === "assign";
}

function startsAfterSwitch(
  symbol: FunctionSymbol,
  program: Program,
  onTheWay: Set<FunctionSymbol>,
): readonly Start[] | undefined {
  if (onTheWay.has(symbol)) return undefined;
  onTheWay.add(symbol);
  const statements = symbol.definition?.body.statements ?? [];
  for (const [index, statement] of statements.entries()) {
    const isPlain = statement.kind === "expression" || statement.kind === "assembly";
    const after = statements.slice(isPlain ? index + 1 : index);
    if (letsInterruptsCome(statement)) return [{ function: symbol, statements: after }];
    for (const callee of calledBy(symbol, statement, program)) {
      const inside = startsAfterSwitch(callee, program, onTheWay);
      if (inside === undefined) continue;
      return [...inside, { function: symbol, statements: after }];
    }
  }
  return undefined;
}

function calledBy(
  within: FunctionSymbol,
  statement: TypedStatement,
  program: Program,
): readonly FunctionSymbol[] {
  return usesIn(within, [statement]).calls.flatMap(({ callee }) => program.definitionOf(callee) ?? []);
}

/** Registers whose bits let single interrupts come. */
const ENABLES = /^(EIMSK|PCICR|PCMSK\d?|GIMSK|GICR|TIMSK\d?|UCSR\d?B|USICR)$/;

function letsInterruptsCome(statement: TypedStatement): boolean {
  const own = interruptSwitchOf(statement);
  if (own !== undefined) return !own;
  let found = false;
  walkStatement(statement, {
    statement(inner) {
      found ||= interruptSwitchOf(inner) === false;
      return !found;
    },
    expression(expression) {
      found ||= installsHandler(expression) || writesEnable(expression);
      return !found && expression.kind !== "lambda";
    },
  });
  return found;
}

function installsHandler(expression: TypedExpression): boolean {
  return /^attach\w*interrupt/i.test(namedCallOf(expression)?.name ?? "");
}

function writesEnable(expression: TypedExpression): boolean {
  if (expression.kind !== "assign" && expression.kind !== "compound-assign") return false;
  const { first } = expression.target.at;
  return [first.text, ...macrosOf(first)].some((name) => ENABLES.test(name));
}
