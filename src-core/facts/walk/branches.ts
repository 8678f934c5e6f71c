import type { At } from "../../reader/typed/nodes.ts";
import type { BranchEvent, Event } from "./events.ts";
import { heldValue } from "./load-store.ts";
import type { Machine } from "./machine.ts";
import type { Changes } from "./memory.ts";
import { joinValues, tracesOf, unknown } from "./unknowns.ts";
import type { Trace, Value } from "./values.ts";

/**
 * Walks every side from the state as it is and goes on from what the sides that come to their end have in
 * common. Gives the join of what they give.
 */
export function splitPath(
  machine: Machine,
  at: At,
  decider: { readonly condition: Value | undefined; readonly selector: Value | undefined },
  sides: readonly (() => Value | undefined)[],
): Value | undefined {
  const { memory } = machine;
  const mark = memory.mark();
  const why: readonly Trace[] = tracesOf(decider.condition ?? decider.selector ?? nothing);
  const outcomes: Changes[] = [];
  const walked: Event[][] = [];
  let joined: Value | undefined;
  let someEnded = false;
  for (const side of sides) {
    machine.alive = true;
    let value: Value | undefined;
    walked.push(
      machine.capture(() => {
        value = side();
      }),
    );
    if (machine.alive) {
      outcomes.push(memory.changesSince(mark));
      if (value !== undefined) joined = joined === undefined ? value : joinValues(joined, value, why);
    } else {
      someEnded = true;
    }
    memory.undoTo(mark);
  }
  if (walked.some((events) => events.length > 0)) {
    const branch: BranchEvent = {
      kind: "branch",
      at,
      condition: decider.condition,
      selector: decider.selector,
      sides: walked,
    };
    machine.emit(branch);
  }
  if (someEnded) machine.decided(why);
  machine.continueFrom(outcomes, why, (place) => heldValue(machine, place));
  return joined;
}

const nothing: Value = unknown(undefined);
