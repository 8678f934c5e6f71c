import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Event, Walk } from "./events.ts";
import { eachListIn } from "./in-order.ts";

interface PlacedEvent {
  readonly event: Event;
  readonly symbol: FunctionSymbol;
}

const placed = new WeakMap<Walk, readonly PlacedEvent[]>();

/**
 * Calls `met` for every event with the function in whose body it stands; what a call did that an earlier one did as well is
 * met once.
 */
export function eachEvent(walk: Walk, met: (event: Event, symbol: FunctionSymbol) => void): void {
  let all = placed.get(walk);
  if (all === undefined) {
    all = placedEvents(walk);
    placed.set(walk, all);
  }
  for (const { event, symbol } of all) met(event, symbol);
}

function placedEvents(walk: Walk): readonly PlacedEvent[] {
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
  for (const { entry, events } of walk.entries) goThrough(events, entry.function);
  return all;
}
