import type { TypedExpression } from "../typed/nodes.ts";
import type { DataModel } from "../types/types.ts";
import { newRun } from "./evaluate.ts";
import { locate } from "./locate.ts";

/**
 * The fixed address of a memory-mapped object: `UBRR0` (a dereferenced cast of a number), a member or element
 * of a block of registers, a register seen through a cast. Undefined where the expression is no such object.
 */
export function addressOf(expression: TypedExpression, model: DataModel): number | undefined {
  const place = locate(newRun(model), expression);
  if (place.kind === "unknown" || place.base.kind !== "absolute") return undefined;
  return place.offset >= 0n && place.offset <= 0xffff_ffffn ? Number(place.offset) : undefined;
}
