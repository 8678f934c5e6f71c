import type { TypedExpression } from "../typed/nodes.ts";
import type { DataModel } from "../types/types.ts";
import { place } from "./evaluate.ts";

/**
 * The fixed address of a memory-mapped object: `UBRR0` (a dereferenced cast of a number), a member or element
 * of a block of registers, a register seen through a cast. Undefined where the expression is no such object.
 */
export function addressOf(expression: TypedExpression, model: DataModel): number | undefined {
  const found = place(expression, model);
  if (found.kind === "unknown" || found.base.kind !== "absolute") return undefined;
  return found.offset >= 0n && found.offset <= 0xffff_ffffn ? Number(found.offset) : undefined;
}
