import type { Walk } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import type { Value } from "../walk/values.ts";
import type { SetUp } from "./serial-facts.ts";

const TOP_BIT = 0x80;

/**
 * Whether every byte sent has its top bit set, over all that the firmware does. `bytesOf` gives the values that
 * an event sends; undefined for an event that sends bytes nobody can see here.
 */
export function topBitOf(
  walk: Walk,
  bytesOf: (event: Walk["entries"][number]["events"][number]) => readonly Value[] | undefined,
): SetUp["topBit"] {
  let seen = false;
  for (const { events } of walk.entries) {
    for (const event of eachOnce(events)) {
      const bytes = bytesOf(event);
      if (bytes === undefined) return "not seen to be set";
      if (bytes.length > 0) seen = true;
      if (!bytes.every(hasTopBit)) return "not seen to be set";
    }
  }
  return seen ? "set" : "no bytes seen";
}

function hasTopBit(value: Value): boolean {
  if (value.kind === "integer") return (value.value & TOP_BIT) !== 0;
  return value.kind === "unknown" && (value.known & value.ones & TOP_BIT) !== 0;
}
