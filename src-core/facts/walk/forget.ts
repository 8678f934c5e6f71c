import type { Type } from "../../reader/types/types.ts";
import { type Effects, outlivesCalls } from "./effects.ts";
import { heldValue } from "./load-store.ts";
import { pointedTo } from "./lvalues.ts";
import type { Machine } from "./machine.ts";
import type { Place } from "./places.ts";
import { unknown } from "./unknowns.ts";

/** Makes everything unknown that some code may have written. */
export function forgetEffects(machine: Machine, effects: Effects): void {
  const { memory } = machine;
  const forget = (place: Place | undefined, type: Type): void => {
    // What is written is the object; a reference goes on naming it.
    const written =
      place !== undefined && type.kind === "reference"
        ? pointedTo(machine, heldValue(machine, place))
        : place;
    if (written !== undefined) memory.overwrite(written, unknown(undefined));
  };
  for (const variable of effects.variables) {
    const place =
      memory.knownPlaceOf(variable) ?? (outlivesCalls(variable) ? memory.placeOf(variable) : undefined);
    forget(place, variable.type);
  }
  for (const field of effects.fields) {
    for (const place of memory.placesOf(field)) forget(place, field.type);
  }
}
