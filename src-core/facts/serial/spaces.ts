import type { Chip } from "../../model/chips/chip.ts";
import { visibleRange } from "../../reader/tokens.ts";
import { delayOf } from "../board/delay-calls.ts";
import type { PinName } from "../pins/pin-change.ts";
import type { Event, OutsideCall, PinEvent, RegisterWrite, Walk } from "../walk/events.ts";
import { followPaths, type Leaf } from "../walk/follow.ts";
import { eachOnce } from "../walk/in-order.ts";
import type { SpaceAtRest } from "./serial-facts.ts";
import { usartRegisters } from "./usarts.ts";

/** What is known of the pin that sends, on the way through the program. */
interface Rest {
  /** Where it was taken to space and has stayed since. */
  readonly space:
    | { readonly event: PinEvent; readonly call: OutsideCall | undefined; readonly us: number }
    | undefined;
  /** The transmitter of a UART has the pin: what the port says does not matter. */
  readonly taken: boolean;
  /** The call that a change of a pin belongs to comes right before it. */
  readonly lastCall: OutsideCall | undefined;
}

/**
 * Where the program leaves `pin` an output at the level that is space: for longer than `mostUs` microseconds of delays
 * before it changes, or until a byte is sent. `uart` is the one whose transmitter takes the pin.
 */
export function spacesAtRest(
  walk: Walk,
  pin: PinName,
  space: 0 | 1,
  mostUs: number,
  chip: Chip | undefined,
  clockHz: number | undefined,
): readonly SpaceAtRest[] {
  const program = walk.entries.find(({ entry }) => entry.kind === "program");
  const isOwn = (event: Event): boolean => event.kind === "pin" && event.change.pin === pin;
  if (program === undefined || !eachOnce(program.events).some(isOwn)) return [];
  const registers = usartRegisters(chip);
  const found = new Map<PinEvent, SpaceAtRest>();
  const tell = (rest: Rest, us: number | undefined): void => {
    if (rest.space === undefined || found.has(rest.space.event)) return;
    const { event, call } = rest.space;
    const { at } = call ?? event;
    const span = visibleRange(at.first, at.last);
    found.set(event, { pin, span, at, us, call: call?.expressions });
  };
  const longer = new Map<PinEvent, Rest>();
  const takesPin = (write: RegisterWrite): boolean => {
    const register = registers.get(write.register.name);
    if (register?.part !== "b" || register.usart.txPin !== pin) return false;
    return (write.ones & (1 << register.usart.bits.transmitEnable.bit)) !== 0;
  };
  const step = (rest: Rest, event: Leaf): Rest => {
    switch (event.kind) {
      case "pin":
        return event.change.pin === pin && !rest.taken ? afterChange(rest, event, space) : rest;
      case "register-write":
        return takesPin(event) ? { space: undefined, taken: true, lastCall: undefined } : rest;
      case "outside-call": {
        const us = delayOf(event, clockHz)?.us;
        if (us === undefined || rest.space === undefined) return { ...rest, lastCall: event };
        const next = { ...rest, space: { ...rest.space, us: rest.space.us + us }, lastCall: undefined };
        if (next.space.us > mostUs) longer.set(next.space.event, next);
        return next;
      }
      default:
        return rest;
    }
  };
  followPaths<Rest>(
    program.events,
    { space: undefined, taken: false, lastCall: undefined },
    {
      step,
      join: (a, b) => ({
        ...(a.space === undefined ? b : a),
        taken: a.taken && b.taken,
        lastCall: undefined,
      }),
      behindLoop(loop, before, after) {
        const left = Math.max(0, (loop.turns ?? 0) - loop.passes.length);
        if (left === 0 || before.space === undefined || before.space.event !== after.space?.event)
          return after;
        // The last turn that was walked stands for those that were not.
        const each = (after.space.us - before.space.us) / Math.max(1, loop.passes.length);
        const next = { ...after, space: { ...after.space, us: after.space.us + each * left } };
        if (next.space.us > mostUs) longer.set(next.space.event, next);
        return next;
      },
      atTurnEnd: (rest) => tell(rest, undefined),
    },
  );
  for (const rest of longer.values()) tell(rest, rest.space?.us);
  return [...found.values()];
}

function afterChange(rest: Rest, event: PinEvent, space: 0 | 1): Rest {
  const { output, latch } = event.change.after;
  const isSpace = output === 1 && latch === space;
  if (!isSpace) return { ...rest, space: undefined };
  // It may be told twice that it is at space: the first time counts.
  if (rest.space !== undefined) return rest;
  const call = rest.lastCall?.at === event.at ? rest.lastCall : undefined;
  return { ...rest, space: { event, call, us: 0 } };
}
