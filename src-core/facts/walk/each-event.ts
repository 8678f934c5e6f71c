import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { EntryWalk, Event, PlacedEvent, Walk } from "./events.ts";
import { eachListIn } from "./in-order.ts";

/**
 * Calls `met` for every event with the function in whose body it stands; what a call did that an earlier one did as well is
 * met once.
 */
export function eachEvent(walk: Walk, met: (event: Event, symbol: FunctionSymbol) => void): void {
  for (const { event, symbol } of walk.placed) met(event, symbol);
}

/** The events that `eachEvent` goes through. */
export function placedEvents(entries: readonly EntryWalk[]): readonly PlacedEvent[] {
  const all: PlacedEvent[] = [];
  const seen = new Set<readonly Event[]>();
  const goThrough = (events: readonly Event[], symbol: FunctionSymbol): void => {
    if (events.length === 0 || seen.has(events)) return;
    seen.add(events);
    for (const event of events) {
      all.push({ event, symbol });
      const inside = event.kind === "call" ? event.function : symbol;
      eachListIn(event, (list) => goThrough(list, inside));
    }
  };
  for (const { entry, events } of entries) goThrough(events, entry.function);
  return all;
}
