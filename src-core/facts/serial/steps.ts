import type { CallEvent, Event, OutsideCall, RegisterWrite } from "../walk/events.ts";

/** Something that may set up a port, with the calls that led to it, outermost first. */
export interface Step {
  readonly event: RegisterWrite | OutsideCall;
  readonly calls: readonly CallEvent[];
  /** It stands on one side of a condition that is not known. */
  readonly conditional: boolean;
}

/** All such events in the order of the text, each with its way. */
export function stepsIn(events: readonly Event[]): readonly Step[] {
  const steps: Step[] = [];
  const collect = (inside: readonly Event[], calls: readonly CallEvent[], conditional: boolean): void => {
    for (const event of inside) {
      switch (event.kind) {
        case "register-write":
        case "outside-call":
          steps.push({ event, calls, conditional });
          break;
        case "call":
          collect(event.events, [...calls, event], conditional);
          break;
        case "branch":
          for (const side of event.sides) collect(side, calls, true);
          break;
        case "loop":
          for (const pass of event.passes) collect(pass, calls, conditional || event.mayBeSkipped);
          break;
        default:
      }
    }
  };
  collect(events, [], false);
  return steps;
}
