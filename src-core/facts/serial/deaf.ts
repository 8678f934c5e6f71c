import { visibleRange } from "../../reader/tokens.ts";
import type { At } from "../../reader/typed/nodes.ts";
import { delayOf } from "../board/delay-calls.ts";
import type { PinName } from "../pins/pin-change.ts";
import type { CallEvent, OutsideCall, Walk } from "../walk/events.ts";
import { followPaths, type Leaf } from "../walk/follow.ts";
import type { DeafSending } from "./serial-facts.ts";

/** `ATOMIC_BLOCK` has functions of its own in the stand-in header. */
const TURN_OFF: ReadonlySet<string> = new Set([
  "__builtin_avr_cli",
  "cli",
  "noInterrupts",
  "__interrupts_off",
  "__leave_off",
]);
const TURN_ON: ReadonlySet<string> = new Set([
  "__builtin_avr_sei",
  "sei",
  "interrupts",
  "__interrupts_on",
  "__leave_on",
  "__restore_status",
]);

/** What happens while interrupts are off. */
interface Quiet {
  readonly off: At | undefined;
  /** Microseconds of delays since then. */
  readonly us: number;
  /** How often the pin that sends has changed since then. */
  readonly changes: number;
  /** The mouse's clock is low, so that the mouse is quiet. */
  readonly held: boolean;
}

const OPEN: Quiet = { off: undefined, us: 0, changes: 0, held: false };

/** More changes of the pin than a single bit makes. */
const FEWEST_CHANGES = 4;

/**
 * Places where the program turns interrupts off and sends a byte bit by bit on `pin` before it lets them come again. None
 * where the mouse's clock is held as well: then the mouse is quiet.
 */
export function deafSendings(
  walk: Walk,
  pin: PinName,
  clock: PinName,
  clockHz: number | undefined,
): readonly DeafSending[] {
  const found = new Map<At, number>();
  const end = ({ off, us, changes, held }: Quiet): Quiet => {
    if (off !== undefined && changes >= FEWEST_CHANGES) found.set(off, Math.max(us, found.get(off) ?? 0));
    return { ...OPEN, held };
  };
  const step = (quiet: Quiet, event: Leaf, calls: readonly CallEvent[]): Quiet => {
    switch (event.kind) {
      case "outside-call": {
        if (TURN_OFF.has(event.name))
          return quiet.off === undefined && !quiet.held ? { ...OPEN, off: placeOf(event, calls) } : quiet;
        if (TURN_ON.has(event.name)) return end(quiet);
        const us = quiet.off === undefined ? undefined : delayOf(event, clockHz)?.us;
        return us === undefined ? quiet : { ...quiet, us: quiet.us + us };
      }
      case "register-write":
        return event.register.name === "SREG" ? end(quiet) : quiet;
      case "pin":
        if (event.change.pin === clock) {
          const { output, latch } = event.change.after;
          return { ...OPEN, held: output === 1 && latch === 0 };
        }
        return event.change.pin === pin && quiet.off !== undefined
          ? { ...quiet, changes: quiet.changes + 1 }
          : quiet;
      default:
        return quiet;
    }
  };
  const join = (a: Quiet, b: Quiet): Quiet => {
    if (a.off !== b.off) return { ...OPEN, held: a.held || b.held };
    return a.us <= b.us ? a : b;
  };
  for (const { entry, events } of walk.entries) {
    if (entry.kind === "program") followPaths(events, OPEN, { step, join });
  }
  return [...found].map(([at, us]) => ({ span: visibleRange(at.first, at.last), us }));
}

/** Where the author says so: for the constructor of an object that keeps interrupts out, where the object is made. */
function placeOf(event: OutsideCall, calls: readonly CallEvent[]): At {
  const last = calls.at(-1);
  return last?.function.special === "constructor" ? last.at : event.at;
}
