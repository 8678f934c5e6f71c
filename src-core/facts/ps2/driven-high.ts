import { visibleRange } from "../../reader/tokens.ts";
import { driveOf, type PinChange, type PinName } from "../pins/pin-change.ts";
import type { EntryWalk, Event, OutsideCall, PinEvent, RegisterWrite } from "../walk/events.ts";
import { inOrder } from "../walk/in-order.ts";
import type { Value } from "../walk/values.ts";
import type { PortPins } from "./port-pins.ts";
import type { DrivenHigh, DrivenHighWay, Line } from "./ps2-facts.ts";

/**
 * Places where a line is driven high and stays so. A write that makes a pin high on its way to being let go
 * or pulled low, with nothing in between, is left alone: it lasts for two instructions.
 */
export function findDrivenHigh(walks: readonly EntryWalk[], pins: PortPins): DrivenHigh[] {
  const lines = new Map<PinName, Line>();
  if (pins.clock !== undefined) lines.set(pins.clock.pin, "clock");
  if (pins.data !== undefined) lines.set(pins.data.pin, "data");
  if (lines.size === 0) return [];
  const found = new Map<string, DrivenHigh>();
  for (const { events } of walks) {
    const flat = [...inOrder(events)];
    for (const [index, event] of flat.entries()) {
      if (event.kind !== "pin") continue;
      const line = lines.get(event.change.pin);
      const how = line === undefined ? undefined : highness(event.change);
      if (line === undefined || how === undefined || passesAtOnce(flat, index, event)) continue;
      const span = visibleRange(event.at.first, event.at.last);
      const key = `${line} ${span.file} ${span.start}`;
      if (found.get(key)?.sometimes === false) continue;
      found.set(key, { line, span, sometimes: how === "sometimes", way: wayOf(flat, index, event) });
    }
  }
  return [...found.values()];
}

function highness(change: PinChange): "always" | "sometimes" | undefined {
  const drive = driveOf(change.after);
  if (drive === "high") return "always";
  return drive === "level-unknown" && mayBeEither(change.value) ? "sometimes" : undefined;
}

/** A value of which one bit alone is not known: the bit of a byte, a level, a truth. */
function mayBeEither(value: Value | undefined): boolean {
  if (value?.kind !== "unknown" || value.from === undefined) return false;
  const open = ~value.known >>> 0;
  return open !== 0 && (open & (open - 1)) === 0;
}

/** Whether the very next thing that happens is another write to the pin: then that one counts. */
function passesAtOnce(flat: readonly Event[], index: number, event: PinEvent): boolean {
  for (const next of flat.slice(index + 1, index + 40)) {
    switch (next.kind) {
      case "call":
      case "branch":
      case "leave":
      case "register-write":
        continue;
      case "outside-call":
        if (next.name === "pinMode" || next.name === "digitalWrite") continue;
        return false;
      case "pin":
        // The same write may have changed other pins as well.
        if (next.at === event.at && next.change.pin !== event.change.pin) continue;
        return next.change.pin === event.change.pin && next.at !== event.at;
      default:
        return false;
    }
  }
  return false;
}

function wayOf(flat: readonly Event[], index: number, event: PinEvent): DrivenHighWay {
  const call = flat[index - 1];
  if (call?.kind === "outside-call" && call.at === event.at && call.name === "digitalWrite") {
    return isPulledLowByMode(flat, event.change.pin) ? writeWay(call) : { kind: "other" };
  }
  const direction = directionWrite(flat, index, event);
  const operand = direction?.value.from;
  if (direction === undefined || operand === undefined) return { kind: "other" };
  const { first } = direction.at;
  return {
    kind: "direction",
    target: visibleRange(first, first),
    operand: visibleRange(operand.at.first, operand.at.last),
  };
}

function writeWay(call: OutsideCall): DrivenHighWay {
  return {
    kind: "digitalWrite",
    expressions: call.expressions,
    call: visibleRange(call.at.first, call.at.last),
  };
}

/** Whether making the pin an output is what pulls it low each time, so that letting it go changes nothing else. */
function isPulledLowByMode(flat: readonly Event[], pin: PinName): boolean {
  const falls = flat.filter(
    (event): event is PinEvent =>
      event.kind === "pin" && event.change.pin === pin && driveOf(event.change.after) === "low",
  );
  return (
    falls.length > 0 && falls.every(({ change }) => change.before.output !== 1 || change.before.latch === 0)
  );
}

/** The `DDRx |= bit` of the same function that made this pin an output. */
function directionWrite(flat: readonly Event[], index: number, event: PinEvent): RegisterWrite | undefined {
  const [, letter, bit] = /^P([A-L])([0-7])$/.exec(event.change.pin) ?? [];
  if (letter === undefined || bit === undefined) return undefined;
  for (let at = index - 1; at >= 0 && at > index - 40; at -= 1) {
    const earlier = flat[at];
    if (earlier?.kind !== "register-write" || earlier.register.name !== `DDR${letter}`) continue;
    const isOwn = earlier.chain === event.chain && earlier.operator === "|=";
    return isOwn && earlier.ones === 1 << Number(bit) ? earlier : undefined;
  }
  return undefined;
}
