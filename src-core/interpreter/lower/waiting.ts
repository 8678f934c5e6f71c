import type { TypedExpression, TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { walkExpression, walkStatement } from "../../reader/typed/walk.ts";
import { type Counted, countedIn } from "./counted-waits.ts";
import type { FunctionScope } from "./scope.ts";

export type Loop = Extract<TypedStatement, { kind: "while" | "do" | "for" }>;

/** Statements before a loop, and at the start of each of its turns. */
export interface TurnStarts {
  readonly first: string;
  readonly each: string;
}

const none: TurnStarts = { first: "", each: "" };

/**
 * Has the turns of a loop told (`run/turns.ts`), where cycles are counted, so that those in which it waits are skipped. To
 * be called before the loop is lowered: variables of the generated code that live on from turn to turn are compared
 * here, as `run/changes.ts` does not see them.
 */
export function turnStarts(scope: FunctionScope, loop: Loop): TurnStarts {
  if (scope.linkage.costs === undefined) return none;
  const changed = changedIn(scope, loop);
  const count = countOf(scope, loop, changed);
  // It counts its turns and does something with their number: no two are the same.
  if (count === undefined && loop.kind === "for" && loop.step !== undefined && changesName(scope, loop.step))
    return none;
  const [moment, cycles] = [scope.temporary(), scope.temporary()];
  const first = `${moment}=-1;`;
  const told = tellTurn(scope, moment, cycles, count);
  const others = changed.filter(({ variable }) => variable !== count?.variable);
  const pairs = others.map(({ name }) => ({ name, before: scope.temporary() }));
  if (pairs.length === 0) return { first, each: told };
  const isSame = pairs.map(({ name, before }) => `${name}===${before}`).join("&&");
  const remember = pairs.map(({ name, before }) => `${before}=${name}`).join(",");
  return { first, each: `if(${isSame}){${told}}else{${remember},${moment}=-1}` };
}

interface Count extends Changed, Counted {}

/** A variable by whose count alone turns may differ. */
function countOf(scope: FunctionScope, loop: Loop, changed: readonly Changed[]): Count | undefined {
  for (const each of changed) {
    const counted = countedIn(loop, each.variable, scope.linkage.model);
    if (counted !== undefined) return { ...each, ...counted };
  }
  return undefined;
}

/** Tells that a turn begins. A count goes on with the turns that are skipped. */
function tellTurn(scope: FunctionScope, moment: string, cycles: string, count: Count | undefined): string {
  const marked = `${moment}=T[0];${cycles}=T[1];`;
  if (count === undefined) return `turned(${moment},${cycles});${marked}`;
  const { name, least, most, limit } = count;
  const before = scope.temporary();
  return `${name}=${before}=counted(${moment},${cycles},${name},${before},${least},${most},${limit});${marked}`;
}

interface Changed {
  readonly variable: Variable;
  /** In the generated code. */
  readonly name: string;
}

/** Variables of the generated code that are declared outside of the loop and changed in it. */
function changedIn(scope: FunctionScope, loop: Loop): readonly Changed[] {
  const found = new Map<Variable, Changed>();
  walkStatement(loop, {
    expression: (expression) => {
      const changed = changedBy(scope, expression);
      if (changed !== undefined) found.set(changed.variable, changed);
      return true;
    },
  });
  return [...found.values()];
}

function changesName(scope: FunctionScope, expression: TypedExpression): boolean {
  let found = false;
  walkExpression(expression, {
    expression: (each) => {
      if (each.kind === "update") found ||= changedBy(scope, each) !== undefined;
      return !found;
    },
  });
  return found;
}

/** The variable that is assigned to here; undefined for objects that lie in memory. */
function changedBy(scope: FunctionScope, expression: TypedExpression): Changed | undefined {
  const target =
    expression.kind === "update"
      ? expression.operand
      : expression.kind === "assign" || expression.kind === "compound-assign"
        ? expression.target
        : undefined;
  if (target?.kind !== "variable" || scope.addresses.has(target.variable)) return undefined;
  const { variable } = target;
  const name = scope.names.get(variable);
  return name === undefined ? undefined : { variable, name };
}
