import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Event, Walk } from "./events.ts";
import { eachListIn } from "./in-order.ts";

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
      const inside = event.kind === "call" ? event.function : symbol;
      eachListIn(event, (list) => goThrough(list, inside));
    }
  };
  for (const { entry, events } of walk.entries) goThrough(events, entry.function);
}
