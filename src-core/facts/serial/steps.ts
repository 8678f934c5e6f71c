import type { CallEvent, Event, OutsideCall, RegisterWrite } from "../walk/events.ts";
import { holding } from "../walk/in-order.ts";

/** Something that may set up a port, with the calls that led to it, outermost first. */
export interface Step {
  readonly event: RegisterWrite | OutsideCall;
  readonly calls: readonly CallEvent[];
  /** It stands on one side of a condition that is not known. */
  readonly conditional: boolean;
}

/** All events that are sought, in the order of the text, each with its way. */
export function stepsIn(
  events: readonly Event[],
  isSought: (event: Step["event"]) => boolean,
): readonly Step[] {
  const steps: Step[] = [];
  const holdsSought = holding(
    ["register-write", "outside-call"],
    (event) => isStep(event) && isSought(event),
  );
  const collect = (inside: readonly Event[], calls: readonly CallEvent[], conditional: boolean): void => {
    if (!holdsSought(inside)) return;
    for (const event of inside) {
      switch (event.kind) {
        case "register-write":
        case "outside-call":
          if (isSought(event)) steps.push({ event, calls, conditional });
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

function isStep(event: Event): event is Step["event"] {
  return event.kind === "register-write" || event.kind === "outside-call";
}
