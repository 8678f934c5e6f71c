import type { CallEvent, Event } from "../walk/events.ts";

/** An event with the calls that led to it, outermost first. */
export interface Step {
  readonly event: Event;
  readonly calls: readonly CallEvent[];
  /** It stands on one side of a condition that is not known. */
  readonly conditional: boolean;
}

/** All events in the order of the text, each with its way. */
export function* stepsIn(
  events: readonly Event[],
  calls: readonly CallEvent[] = [],
  conditional = false,
): Generator<Step> {
  for (const event of events) {
    yield { event, calls, conditional };
    switch (event.kind) {
      case "call":
        yield* stepsIn(event.events, [...calls, event], conditional);
        break;
      case "branch":
        for (const side of event.sides) yield* stepsIn(side, calls, true);
        break;
      case "loop":
        for (const pass of event.passes) yield* stepsIn(pass, calls, conditional || event.mayBeSkipped);
        break;
      default:
    }
  }
}
