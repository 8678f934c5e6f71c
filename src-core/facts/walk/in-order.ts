import type { Event } from "./events.ts";

const flattened = new WeakMap<readonly Event[], readonly Event[]>();

/**
 * All events in the order in which the text does them, those inside calls, branches and loops after their own.
 * Kept with the list they come from.
 */
export function inOrder(events: readonly Event[]): readonly Event[] {
  let flat = flattened.get(events);
  if (flat === undefined) {
    const into: Event[] = [];
    flatten(events, into);
    flat = into;
    flattened.set(events, flat);
  }
  return flat;
}

/** Whether all events, those inside others included, are of that sort; stops at the first that is not. */
export function everyEvent(events: readonly Event[], holds: (event: Event) => boolean): boolean {
  for (const event of events) {
    if (!holds(event)) return false;
    if (event.kind === "call" && !everyEvent(event.events, holds)) return false;
    if (event.kind === "branch") for (const side of event.sides) if (!everyEvent(side, holds)) return false;
    if (event.kind === "loop") for (const pass of event.passes) if (!everyEvent(pass, holds)) return false;
  }
  return true;
}

function flatten(events: readonly Event[], into: Event[]): void {
  for (const event of events) {
    into.push(event);
    if (event.kind === "call") flatten(event.events, into);
    else if (event.kind === "branch") for (const side of event.sides) flatten(side, into);
    else if (event.kind === "loop") for (const pass of event.passes) flatten(pass, into);
  }
}
