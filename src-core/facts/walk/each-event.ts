import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Event, Walk } from "./events.ts";

/**
 * Calls `met` for every event with the function in whose body it stands; what a call did that an earlier one did as well is
 * met once.
 */
export function eachEvent(walk: Walk, met: (event: Event, symbol: FunctionSymbol) => void): void {
  const seen = new Set<readonly Event[]>();
  const goThrough = (events: readonly Event[], symbol: FunctionSymbol): void => {
    if (seen.has(events)) return;
    seen.add(events);
    for (const event of events) {
      met(event, symbol);
      if (event.kind === "call") goThrough(event.events, event.function);
      else if (event.kind === "branch") for (const side of event.sides) goThrough(side, symbol);
      else if (event.kind === "loop") for (const pass of event.passes) goThrough(pass, symbol);
    }
  };
  for (const { entry, events } of walk.entries) goThrough(events, entry.function);
}
