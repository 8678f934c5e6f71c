import { functionCalled } from "../../reader/typed/function-called.ts";
import type { FunctionSymbol, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf, statementsIn, walkStatement } from "../../reader/typed/walk.ts";
import { directEffects, reachedFrom } from "../walk/effects.ts";
import type { Linkage } from "../walk/linkage.ts";
import type { LineTraces } from "./line-traces.ts";
import { countedBy, type Named, namedBy } from "./named.ts";

/**
 * Whether something that a loop counts decides when it is left: then it comes to an end without an edge on the lines.
 * Terms that a line or its handler decides do not count, so the read position of a ring is no such counter.
 */
export function countsItsWayOut(loop: TypedStatement, lines: LineTraces, linkage: Linkage): boolean {
  const reached = reachedFrom(directEffects(loop).calls, linkage);
  const bodies = [...reached].flatMap((symbol) => linkage.definitionOf(symbol)?.body ?? []);
  const counted = new Set<Named>();
  for (const code of [loop, ...bodies]) collectCounted(code, counted, linkage);
  if (counted.size === 0) return false;
  const looking: Looking = { counted, lines, linkage, seen: new Set() };
  return conditionsOf(loop).some((condition) => isCounted(condition, looking));
}

interface Looking {
  readonly counted: ReadonlySet<Named>;
  readonly lines: LineTraces;
  readonly linkage: Linkage;
  readonly seen: Set<FunctionSymbol>;
}

function collectCounted(code: TypedStatement, into: Set<Named>, linkage: Linkage): void {
  walkStatement(code, {
    expression(expression) {
      const named = countedBy(expression, linkage);
      if (named !== undefined) into.add(named);
      return true;
    },
  });
}

/** The loop's condition, and those under which a statement in it leaves. */
function conditionsOf(loop: TypedStatement): TypedExpression[] {
  const conditions: TypedExpression[] = [];
  if ((loop.kind === "while" || loop.kind === "do" || loop.kind === "for") && loop.condition !== undefined) {
    conditions.push(loop.condition);
  }
  walkStatement(loop, {
    statement(statement) {
      if ((statement.kind === "if" || statement.kind === "switch") && leaves(statement)) {
        conditions.push(statement.condition);
      }
      return true;
    },
    expression: (expression) => expression.kind === "statement-value",
  });
  return conditions;
}

function leaves(statement: TypedStatement): boolean {
  if (statement.kind === "break" || statement.kind === "return" || statement.kind === "goto") return true;
  return statementsIn(statement).some(leaves);
}

/** Whether a term of a condition hangs on what is counted, and on nothing that the lines decide. */
function isCounted(term: TypedExpression, looking: Looking): boolean {
  switch (term.kind) {
    case "logical":
    case "comma":
      return isCounted(term.left, looking) || isCounted(term.right, looking);
    case "not":
    case "convert":
      return isCounted(term.operand, looking);
    case "assign":
      return isCounted(term.value, looking);
    default:
      break;
  }
  const parts = partsOf(term);
  if (parts.some((part) => isDecidedByLine(part, looking))) return false;
  return parts.some((part) => {
    const named = namedBy(part, looking.linkage);
    if (named !== undefined) return looking.counted.has(named);
    const called = functionCalled(part);
    return called !== undefined && countsInside(called, looking);
  });
}

/** The expression and all in it, without what is only assigned to. */
function partsOf(expression: TypedExpression): TypedExpression[] {
  const inner = expression.kind === "assign" ? [expression.value] : operandsOf(expression);
  return [expression, ...inner.flatMap(partsOf)];
}

function isDecidedByLine(part: TypedExpression, { lines, linkage }: Looking): boolean {
  if (part.kind === "variable") return lines.isHandled(linkage.canonical(part.variable), undefined);
  return part.kind === "member" && lines.isHandled(undefined, linkage.canonicalField(part.field));
}

/** The same for what decides in a function that a condition calls. */
function countsInside(symbol: FunctionSymbol, looking: Looking): boolean {
  if (looking.seen.has(symbol)) return false;
  looking.seen.add(symbol);
  const body = looking.linkage.definitionOf(symbol)?.body;
  if (body === undefined) return false;
  let found = false;
  walkStatement(body, {
    statement(statement) {
      const decides = statement.kind === "return" || statement.kind === "if" || statement.kind === "switch";
      if (decides && expressionsIn(statement).some((each) => isCounted(each, looking))) found = true;
      return !found;
    },
  });
  return found;
}
