import { heldValue } from "./load-store.ts";
import { neighbour } from "./lvalues.ts";
import type { Machine } from "./machine.ts";
import { integerOf, type Value } from "./values.ts";

/** More bytes are no message that anybody looks into. */
const mostBytes = 40;

/**
 * The bytes behind a pointer that a call is given first: as many as the second argument says, or those of a text up to
 * its zero. Undefined where the first argument is no pointer to bytes, or their number is not known or large.
 */
export function contentsOf(machine: Machine, given: readonly Value[]): readonly Value[] | undefined {
  const [first, second] = given;
  if (first?.kind !== "address" || !isByte(first.place.type)) return undefined;
  const count = second === undefined ? mostBytes : integerOf(second);
  if (count === undefined || count > mostBytes) return undefined;
  const bytes: Value[] = [];
  for (let at = 0; at < count; at += 1) {
    const place = neighbour(machine, first.place, at);
    if (place === undefined) return undefined;
    const value = machine.quietly(() => heldValue(machine, place));
    const isEnd = second === undefined && integerOf(value) === 0;
    if (isEnd) return bytes;
    if (second === undefined && integerOf(value) === undefined) return undefined;
    bytes.push(value);
  }
  return second === undefined ? undefined : bytes;
}

function isByte(
  type: NonNullable<Extract<Value, { kind: "address" }>["place"]["type"]> | undefined,
): boolean {
  return type?.kind === "integer" && type.bits === 8;
}
