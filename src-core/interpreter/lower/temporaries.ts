import type { At, TypedExpression } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { Type } from "../../reader/types/types.ts";
import { destroySteps, needsDestroying } from "./destructors.ts";
import { objectAt } from "./objects.ts";
import { roomFor } from "./places.ts";
import type { FunctionScope } from "./scope.ts";

/*
 * Temporary objects end with the full expression they stand in, the last made first (C++11 12.2p3). Which of them are
 * made shows when the code runs, so that keeps a list: every one made is put on it with what ends it, and at the end of
 * a full expression the list is brought back to the length that it had.
 */

/** The code of an expression at whose end its temporaries end. */
export function wholeExpression(scope: FunctionScope, make: () => string): string {
  const { made: code, holds } = watched(scope, make);
  return holds ? `ended(Z.length,${code})` : code;
}

/** The same for steps that are one full expression together. */
export function wholeSteps(scope: FunctionScope, make: () => string[]): string[] {
  const { made: steps, holds } = watched(scope, make);
  if (!holds) return steps;
  const before = scope.temporary();
  return [`${before}=Z.length`, ...steps, `ended(${before},0)`];
}

function watched<Made>(
  scope: FunctionScope,
  make: () => Made,
): { readonly made: Made; readonly holds: boolean } {
  const outer = scope.holdsTemporaries;
  scope.holdsTemporaries = false;
  try {
    const made = make();
    return { made, holds: scope.holdsTemporaries };
  } finally {
    scope.holdsTemporaries = outer;
  }
}

/** The address of a temporary object made from an expression. */
export function temporaryObject(scope: FunctionScope, expression: TypedExpression): string {
  const room = roomFor(scope, expression.type, expression);
  return remembered(scope, objectAt(scope, room, expression), expression.type, expression.at);
}

/** The address of an object just made, which is to end with the full expression. */
export function remembered(scope: FunctionScope, made: string, type: Type, at: At): string {
  if (!needsDestroying(scope, type)) return made;
  scope.holdsTemporaries = true;
  const gone = `fresh(o,${sizeOf(type, scope.linkage.model) ?? 0})`;
  return `temporary(${made},(o)=>{${[...destroySteps(scope, "o", type, at), gone].join(";")}})`;
}
