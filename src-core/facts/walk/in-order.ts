import type { Event } from "./events.ts";

/** All events in the order in which the text does them, those inside calls, branches and loops after their own. */
export function* inOrder(events: readonly Event[]): Generator<Event> {
  for (const event of events) {
    yield event;
    if (event.kind === "call") yield* inOrder(event.events);
    else if (event.kind === "branch") for (const side of event.sides) yield* inOrder(side);
    else if (event.kind === "loop") for (const pass of event.passes) yield* inOrder(pass);
  }
}
