import type { Effects } from "./effects.ts";
import type { Machine } from "./machine.ts";
import { unknown } from "./unknowns.ts";

/** Makes everything unknown that some code may have written. */
export function forgetEffects(machine: Machine, effects: Effects): void {
  const { memory } = machine;
  for (const variable of effects.variables) {
    const place =
      memory.knownPlaceOf(variable) ?? (variable.storage === "local" ? undefined : memory.placeOf(variable));
    if (place !== undefined) memory.overwrite(place, unknown(undefined));
  }
  for (const field of effects.fields) {
    for (const place of memory.placesOf(field)) memory.overwrite(place, unknown(undefined));
  }
}
