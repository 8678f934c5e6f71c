import type { Ps2Words } from "../../notes/wires.ts";
import { visibleRange } from "../../reader/tokens.ts";
import { driveOf, type PinName } from "../pins/pin-change.ts";
import type { EntryWalk, Event } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import type { PortPins } from "./port-pins.ts";
import type { LinePullUp, PullUps, Release } from "./ps2-facts.ts";

export function findPullUps(words: Ps2Words, walks: readonly EntryWalk[], pins: PortPins): PullUps {
  return {
    said: words.pullups?.value,
    saidSpan: words.pullups?.span,
    clock: linePullUp(walks, pins.clock?.pin),
    data: linePullUp(walks, pins.data?.pin),
  };
}

function linePullUp(walks: readonly EntryWalk[], pin: PinName | undefined): LinePullUp {
  if (pin === undefined) return { enabled: false, without: [] };
  let enabled = false;
  const without = new Map<string, Release>();
  for (const { events } of walks) {
    let by: Event | undefined;
    for (const event of eachOnce(events)) {
      if (event.kind === "outside-call" || event.kind === "register-write") by = event;
      if (event.kind !== "pin" || event.change.pin !== pin) continue;
      const drive = driveOf(event.change.after);
      // An output bit of which nothing is known may well be the pull-up.
      if (event.change.after.output !== 1 && event.change.after.latch !== 0) enabled = true;
      if (drive !== "released" || by === undefined || !setsDirection(by)) continue;
      const mode = by.kind === "outside-call" ? by.expressions[1] : undefined;
      const span = visibleRange(event.at.first, event.at.last);
      const key = `${span.file} ${span.start}`;
      if (!without.has(key)) without.set(key, { span, mode });
    }
  }
  return { enabled, without: [...without.values()] };
}

/** Makes a pin an input; writing its output bit while it is one only turns the pull-up on or off. */
function setsDirection(by: Event): boolean {
  if (by.kind === "outside-call") return by.name === "pinMode";
  return by.kind === "register-write" && by.register.name.startsWith("DDR");
}
