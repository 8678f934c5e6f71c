import type { TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkExpression, walkStatement } from "../../reader/typed/walk.ts";
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
  const changed = changedNames(scope, loop);
  // It counts its turns: no two are the same.
  if (loop.kind === "for" && loop.step !== undefined && changesName(scope, loop.step)) return none;
  const [moment, cycles] = [scope.temporary(), scope.temporary()];
  const told = `turned(${moment},${cycles}),${moment}=T[0],${cycles}=T[1]`;
  const first = `${moment}=-1;`;
  if (changed.length === 0) return { first, each: `${told};` };
  const pairs = changed.map((name) => ({ name, before: scope.temporary() }));
  const isSame = pairs.map(({ name, before }) => `${name}===${before}`).join("&&");
  const remember = pairs.map(({ name, before }) => `${before}=${name}`).join(",");
  return { first, each: `if(${isSame}){${told}}else{${remember},${moment}=-1}` };
}

/** Variables of the generated code that are declared outside of the loop and changed in it. */
function changedNames(scope: FunctionScope, loop: Loop): readonly string[] {
  const names = new Set<string>();
  walkStatement(loop, {
    expression: (expression) => {
      const name = nameChangedBy(scope, expression);
      if (name !== undefined) names.add(name);
      return true;
    },
  });
  return [...names];
}

function changesName(scope: FunctionScope, expression: TypedExpression): boolean {
  let found = false;
  walkExpression(expression, {
    expression: (each) => {
      if (each.kind === "update") found ||= nameChangedBy(scope, each) !== undefined;
      return !found;
    },
  });
  return found;
}

/** The generated name of the variable that is assigned to here; undefined for objects that lie in memory. */
function nameChangedBy(scope: FunctionScope, expression: TypedExpression): string | undefined {
  const target =
    expression.kind === "update"
      ? expression.operand
      : expression.kind === "assign" || expression.kind === "compound-assign"
        ? expression.target
        : undefined;
  if (target?.kind !== "variable" || scope.addresses.has(target.variable)) return undefined;
  return scope.names.get(target.variable);
}
