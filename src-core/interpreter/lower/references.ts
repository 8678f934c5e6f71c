import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { alignmentOf, sizeOf } from "../../reader/types/layout.ts";
import type { Type } from "../../reader/types/types.ts";
import { destroySteps, needsDestroying } from "./destructors.ts";
import { objectAt } from "./objects.ts";
import { bound, classStep, roomFor } from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { shapeOf, stored } from "./shape.ts";
import { valueAs } from "./values.ts";

/**
 * The address to which a reference with a name is bound: a temporary lasts as long as the reference (C++11 12.2p5),
 * to the end of the block or for ever.
 */
export function lastingAddress(
  scope: FunctionScope,
  expression: TypedExpression,
  to: Type,
  life: "block" | "program",
): string {
  if (expression.lvalue) return bound(scope, expression, to);
  const { object, offset } = wholeObject(expression);
  if (life === "block" && !needsDestroying(scope, object.type)) return bound(scope, expression, to);
  if (object.type.kind !== "record") return lastingScalar(scope, expression, to);
  const room =
    life === "block" ? roomFor(scope, object.type, object) : lastingRoom(scope, object.type, object);
  const made = objectAt(scope, room, object);
  if (life === "block")
    scope.destroyed[scope.destroyed.length - 1]?.steps.push(
      ...destroySteps(scope, room, object.type, object.at),
    );
  return offset === 0 ? made : `(${made}+${offset})`;
}

/** The object that lasts with a part of it: its base or member that the reference means. */
function wholeObject(expression: TypedExpression): {
  readonly object: TypedExpression;
  readonly offset: number;
} {
  let object = expression;
  let offset = 0;
  while (object.type.kind === "record" && !object.lvalue) {
    if (object.kind === "member") offset += object.field.bitOffset >> 3;
    else if (object.kind === "convert" && object.operand.type.kind === "record")
      offset += classStep(object.operand.type.record, object.type.record);
    else break;
    object = object.kind === "member" ? object.object : object.operand;
  }
  return { object, offset };
}

function lastingScalar(scope: FunctionScope, expression: TypedExpression, to: Type): string {
  const shape = shapeOf(to, scope.linkage.model);
  if (shape === undefined || shape.kind === "object")
    throw new CannotLower("a reference to this value", expression.at);
  const room = lastingRoom(scope, to, expression);
  return `(${stored(shape, room, valueAs(scope, expression, shape), scope.place(expression.at))},${room})`;
}

function lastingRoom(scope: FunctionScope, type: Type, expression: TypedExpression): string {
  const { linkage } = scope;
  const size = sizeOf(type, linkage.model);
  if (size === undefined) throw new CannotLower("an object of unknown size", expression.at);
  return String(linkage.lastingAddress(expression, size, alignmentOf(type, linkage.model)));
}
