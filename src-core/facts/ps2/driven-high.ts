import { useAround, visibleRange } from "../../reader/tokens.ts";
import { driveOf, type PinChange, type PinName } from "../pins/pin-change.ts";
import type { EntryWalk, Event, OutsideCall, PinEvent, RegisterWrite } from "../walk/events.ts";
import { type Follower, followPaths, type Leaf } from "../walk/follow.ts";
import { eachOnce, inOrder } from "../walk/in-order.ts";
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
  const found = new Map<string, DrivenHigh>();
  for (const { events } of lines.size === 0 ? [] : walks) {
    if (!eachOnce(events).some((event) => event.kind === "pin" && isHigh(event, lines))) continue;
    const flat = inOrder(events);
    for (const event of lastingHighs(events, lines)) {
      const line = lines.get(event.change.pin);
      const how = highness(event.change);
      if (line === undefined || how === undefined) continue;
      const span = visibleRange(event.at.first, event.at.last);
      const key = `${line} ${span.file} ${span.start}`;
      if (found.get(key)?.sometimes === false) continue;
      const way = wayOf(flat, flat.indexOf(event), event);
      const macro = useAround(event.at.first, event.at.last)?.definition;
      found.set(key, { line, span, macro, sometimes: how === "sometimes", way });
    }
  }
  return [...found.values()];
}

/** Writes that leave a pin high until something else happens than another write to it. */
function lastingHighs(events: readonly Event[], lines: ReadonlyMap<PinName, Line>): ReadonlySet<PinEvent> {
  const lasting = new Set<PinEvent>();
  const last = (pending: readonly PinEvent[]): readonly PinEvent[] => {
    for (const event of pending) lasting.add(event);
    return noneHigh;
  };
  const follower: Follower<readonly PinEvent[]> = {
    step(pending, event) {
      if (event.kind === "pin") {
        const { pin } = event.change;
        const left = pending.filter((high) => high.change.pin !== pin);
        if (!isHigh(event, lines)) return left.length === pending.length ? pending : left;
        return [...left, event];
      }
      return pending.length === 0 || isPartOfWrite(event) ? pending : last(pending);
    },
    join: (a, b) => (a === b ? a : [...new Set([...a, ...b])]),
    atTurnEnd: last,
  };
  last(followPaths(events, noneHigh, follower) ?? noneHigh);
  return lasting;
}

function isHigh({ change }: PinEvent, lines: ReadonlyMap<PinName, Line>): boolean {
  return lines.has(change.pin) && highness(change) !== undefined;
}

const noneHigh: readonly PinEvent[] = [];

/** What stands in the list between the writes to a pin without taking time. */
function isPartOfWrite(event: Leaf): boolean {
  if (event.kind === "leave" || event.kind === "register-write") return true;
  return event.kind === "outside-call" && (event.name === "pinMode" || event.name === "digitalWrite");
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

/** The `DDRx |= bit` right before, in the same function, that made this pin an output. */
function directionWrite(flat: readonly Event[], index: number, event: PinEvent): RegisterWrite | undefined {
  const [, letter, bit] = /^P([A-L])([0-7])$/.exec(event.change.pin) ?? [];
  if (letter === undefined || bit === undefined) return undefined;
  for (let at = index - 1; at >= 0; at -= 1) {
    const earlier = flat[at];
    if (earlier?.kind === "pin") continue;
    if (earlier?.kind !== "register-write") return undefined;
    if (earlier.register.name !== `DDR${letter}`) continue;
    return earlier.operator === "|=" && earlier.ones === 1 << Number(bit) ? earlier : undefined;
  }
  return undefined;
}
