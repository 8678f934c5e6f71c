import type { FunctionSymbol, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { type Access, OPEN, type Surroundings, type UsesOfStatements } from "./accesses.ts";
import { namedCallOf } from "./calls.ts";
import { ENABLES, interruptSwitchOf, macrosOf } from "./interrupts-off.ts";

/** Statements of a function from which something starts to run. */
export interface Start {
  readonly function: FunctionSymbol;
  readonly statements: readonly TypedStatement[];
}

export function startOf(symbol: FunctionSymbol): Start {
  return { function: symbol, statements: symbol.definition?.body.statements ?? [] };
}

/** All that is read and written from `starts` on, calls followed; a function counts once for each way it is protected. */
export function accessesFrom(starts: readonly Start[], uses: UsesOfStatements): readonly Access[] {
  const accesses: Access[] = [];
  const seen = new Map<FunctionSymbol, Set<Protection>>();
  const visit = (start: Start, around: Surroundings) => {
    const { accesses: own, calls } = uses.in(start.function, start.statements);
    for (const access of own)
      accesses.push(around === OPEN ? access : { ...access, ...within(access, around) });
    for (const call of calls) {
      const callee = uses.program.definitionOf(call.callee);
      if (callee === undefined) continue;
      const inside = within(call, around);
      const ways = seen.get(callee) ?? new Set();
      const way = protectionOf(inside);
      if (ways.has("none") || ways.has(way)) continue;
      seen.set(callee, ways.add(way));
      visit(startOf(callee), way === "none" ? OPEN : inside);
    }
  };
  for (const start of starts) visit(start, OPEN);
  return accesses;
}

type Protection = "none" | "interrupts off" | "undisturbed" | "behind a condition";

function protectionOf({ interruptsOff, undisturbed, lookedAt }: Surroundings): Protection {
  if (interruptsOff) return "interrupts off";
  if (undisturbed) return "undisturbed";
  return lookedAt.length > 0 ? "behind a condition" : "none";
}

function within(inner: Surroundings, around: Surroundings): Surroundings {
  return {
    interruptsOff: around.interruptsOff || inner.interruptsOff,
    undisturbed: around.undisturbed || inner.undisturbed,
    lookedAt: around.lookedAt.length === 0 ? inner.lookedAt : [...around.lookedAt, ...inner.lookedAt],
  };
}

/**
 * What of `symbol` runs once interrupts can come: all but the statements before the first one that lets them,
 * which may stand in a function called on the way. All of it where no such statement is found.
 */
export function onceInterruptsCome(symbol: FunctionSymbol, uses: UsesOfStatements): readonly Start[] {
  const starts = startsAfterSwitch(symbol, uses, new Set()) ?? [startOf(symbol)];
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
  uses: UsesOfStatements,
  onTheWay: Set<FunctionSymbol>,
): readonly Start[] | undefined {
  if (onTheWay.has(symbol)) return undefined;
  onTheWay.add(symbol);
  const statements = symbol.definition?.body.statements ?? [];
  for (const [index, statement] of statements.entries()) {
    const isPlain = statement.kind === "expression" || statement.kind === "assembly";
    const after = statements.slice(isPlain ? index + 1 : index);
    if (letsInterruptsCome(statement)) return [{ function: symbol, statements: after }];
    for (const callee of calledBy(symbol, statement, uses)) {
      const inside = startsAfterSwitch(callee, uses, onTheWay);
      if (inside === undefined) continue;
      return [...inside, { function: symbol, statements: after }];
    }
  }
  return undefined;
}

function calledBy(
  caller: FunctionSymbol,
  statement: TypedStatement,
  uses: UsesOfStatements,
): readonly FunctionSymbol[] {
  return uses.inOne(caller, statement).calls.flatMap(({ callee }) => uses.program.definitionOf(callee) ?? []);
}

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
