import { type Effects, outlivesCalls } from "./effects.ts";
import type { Machine } from "./machine.ts";
import type { Place } from "./places.ts";
import { unknown } from "./unknowns.ts";

/** Makes everything unknown that some code may have written. */
export function forgetEffects(machine: Machine, effects: Effects): void {
  const { memory } = machine;
  const forget = (place: Place): void => {
    memory.overwrite(place, unknown(undefined));
  };
  for (const variable of effects.variables) {
    const place =
      memory.knownPlaceOf(variable) ?? (outlivesCalls(variable) ? memory.placeOf(variable) : undefined);
    if (place !== undefined) forget(place);
  }
  for (const field of effects.fields) {
    for (const place of memory.placesOf(field)) forget(place);
  }
}
