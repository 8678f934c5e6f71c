import type { Chip } from "../../model/chips/chip.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { PinName } from "../pins/pin-change.ts";
import { interruptPin } from "../ps2/handler-pins.ts";
import { pinOfTrace } from "../ps2/watched-pins.ts";
import type { BranchEvent, Event, Walk } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import { tracesOf } from "../walk/unknowns.ts";
import type { Line } from "./mouse-port.ts";

/** What is known of the mouse's side. */
export interface MouseHost {
  readonly clock: PinName | undefined;
  /** Functions that send a byte to the mouse. */
  readonly senders: ReadonlySet<FunctionSymbol>;
}

/** How the firmware hears the mouse while it sends on. */
export type Forwarding = "by interrupt" | "between sends" | "not known";

/** Calls that ask whether the line can take more. */
const ASKS_LINE = /\.availableForWrite$/;

/**
 * How the mouse is heard where the endless loop of the program sends bytes that are not known whenever they come. Undefined
 * where it does not: where a condition in the loop asks the line or the time, or the mouse's clock is held, which keeps the
 * mouse quiet meanwhile.
 */
export function forwardsAtOnce(
  walk: Walk,
  line: Line,
  { clock, senders }: MouseHost,
  chip: Chip | undefined,
): Forwarding | undefined {
  const program = walk.entries.find(({ entry }) => entry.kind === "program");
  if (program === undefined || clock === undefined) return undefined;
  const loops = eachOnce(program.events).filter((event) => event.kind === "loop" && event.form === "endless");
  const passes = loops.flatMap((loop) => (loop.kind === "loop" ? loop.passes : []));
  if (!passes.some((pass) => sendsUnknown(pass, line))) return undefined;
  if (passes.some((pass) => slowsDown(pass, clock, senders))) return undefined;
  if (isHeardByInterrupt(walk, clock, chip)) return "by interrupt";
  const others = walk.entries.some(({ entry }) => entry.kind === "interrupt");
  return !others && passes.some((pass) => waitsForClock(pass, clock, chip)) ? "between sends" : "not known";
}

export function isHeardByInterrupt(walk: Walk, clock: PinName, chip: Chip | undefined): boolean {
  return walk.entries.some(
    ({ entry }) => entry.kind === "interrupt" && interruptPin(entry, walk.entries, chip) === clock,
  );
}

function waitsForClock(events: readonly Event[], clock: PinName, chip: Chip | undefined): boolean {
  return eachOnce(events).some(
    (event) => event.kind === "loop" && event.waitsFor.some((trace) => pinOfTrace(chip, trace) === clock),
  );
}

function sendsUnknown(events: readonly Event[], line: Line): boolean {
  return eachOnce(events).some((event) => {
    const sending = line.sentBy(event);
    return sending === "unseen" || sending?.some(({ byte }) => byte === undefined) === true;
  });
}

/** Calls of what sends to the mouse are left out: they hold the clock to ask for it. */
function slowsDown(
  events: readonly Event[],
  clock: PinName | undefined,
  senders: ReadonlySet<FunctionSymbol>,
): boolean {
  const inside = (each: readonly Event[]): boolean => slowsDown(each, clock, senders);
  return events.some((event) => {
    switch (event.kind) {
      case "call":
        return !senders.has(event.function) && inside(event.events);
      case "loop":
        return event.passes.some(inside);
      case "branch":
        return asksLineOrTime(event) || event.sides.some(inside);
      case "pin":
        return event.change.pin === clock && holds(event);
      case "outside-call":
        return ASKS_LINE.test(event.name);
      case "assembly":
      case "not-followed":
        return true;
      default:
        return false;
    }
  });
}

function holds({ change }: Extract<Event, { kind: "pin" }>): boolean {
  return change.after.output !== 0 && change.after.latch !== 1;
}

function asksLineOrTime({ condition, selector }: BranchEvent): boolean {
  const value = condition ?? selector;
  return (
    value !== undefined &&
    tracesOf(value).some(
      (trace) =>
        trace.kind === "time" || (trace.kind === "register" && /^UCSR\d?A$/.test(trace.register.name)),
    )
  );
}
