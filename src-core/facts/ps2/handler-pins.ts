import type { Chip } from "../../model/chips/chip.ts";
import type { At } from "../../reader/typed/nodes.ts";
import type { PinName } from "../pins/pin-change.ts";
import { pinOfInterrupt, pinOfNumber, pinsOfVector } from "../pins/pin-names.ts";
import type { Entry, EntryWalk, Event } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import { integerOf, type Value } from "../walk/values.ts";
import { pinOfValue, pinsOfRegister } from "./watched-pins.ts";

/** An interrupt handler of one pin that looks at one other pin: the clock, and the data line. */
interface HandlerPins {
  readonly clock: PinName;
  readonly data: PinName;
  readonly at: At;
}

export function findHandlerPins(walks: readonly EntryWalk[], chip: Chip | undefined): HandlerPins[] {
  const found: HandlerPins[] = [];
  for (const { entry, events } of walks) {
    if (entry.kind !== "interrupt") continue;
    const clock = interruptPin(entry, walks, chip);
    if (clock === undefined) continue;
    const others = new Set(pinsLookedAt(events, chip).filter((pin) => pin !== clock));
    const [data] = others;
    if (data !== undefined && others.size === 1) found.push({ clock, data, at: entry.function.at });
  }
  return found;
}

/** The pin that makes a handler run; undefined where it may be one of several. */
export function interruptPin(
  entry: Entry,
  walks: readonly EntryWalk[],
  chip: Chip | undefined,
): PinName | undefined {
  if (entry.attachedBy !== undefined) return pinOfNumberArgument(entry.attachedBy.arguments[0], chip);
  if (entry.vector === undefined) return undefined;
  const pins = pinsOfVector(chip, entry.vector);
  if (pins.length <= 1) return pins[0];
  const enabled = pinsEnabled(pins, walks, chip);
  return enabled.length === 1 ? enabled[0] : undefined;
}

function pinOfNumberArgument(value: Value | undefined, chip: Chip | undefined): PinName | undefined {
  if (value?.kind === "unknown") {
    const [trace] = value.traces;
    return trace?.kind === "interrupt-of" ? pinOfValue(chip, trace.pin) : undefined;
  }
  const number = integerOf(value);
  if (number === undefined) return undefined;
  return pinOfInterrupt(chip, number) ?? (chip === undefined ? numberWithoutChip(value) : undefined);
}

/** Without a chip, `digitalPinToInterrupt(2)` still names its pin in the text of the call. */
function numberWithoutChip(value: Value | undefined): PinName | undefined {
  const from = value?.from;
  if (from?.kind !== "call" || from.callee.kind !== "function") return undefined;
  if (from.callee.function.name !== "digitalPinToInterrupt") return undefined;
  const [argument] = from.arguments;
  return argument?.kind === "integer" ? pinOfNumber(undefined, Number(argument.value)) : undefined;
}

/** Of the pins of a pin-change vector, those whose mask bit the firmware sets. */
function pinsEnabled(
  pins: readonly PinName[],
  walks: readonly EntryWalk[],
  chip: Chip | undefined,
): readonly PinName[] {
  if (chip?.kind !== "avr") return [];
  const ones = maskBitsSet(walks);
  return pins.filter((name) => {
    const mask = chip.pins.find((pin) => pin.name === name)?.pinChange?.mask;
    return mask !== undefined && ((ones.get(mask.register) ?? 0) & (1 << mask.bit)) !== 0;
  });
}

const maskBits = new WeakMap<readonly EntryWalk[], ReadonlyMap<string, number>>();

/** By the mask registers of pin-change interrupts, the bits that the firmware ever sets. Kept with the walks. */
function maskBitsSet(walks: readonly EntryWalk[]): ReadonlyMap<string, number> {
  const known = maskBits.get(walks);
  if (known !== undefined) return known;
  const ones = new Map<string, number>();
  for (const { events } of walks) {
    for (const event of eachOnce(events)) {
      if (event.kind !== "register-write" || !event.register.name.startsWith("PCMSK")) continue;
      ones.set(event.register.name, (ones.get(event.register.name) ?? 0) | event.ones);
    }
  }
  maskBits.set(walks, ones);
  return ones;
}

/** Pins whose level is looked at one by one. */
export function pinsLookedAt(events: readonly Event[], chip: Chip | undefined): PinName[] {
  const pins: PinName[] = [];
  for (const event of eachOnce(events)) {
    if (event.kind === "register-read") {
      const seen = pinsOfRegister(event.register.name, event.mask);
      if (seen.length === 1) pins.push(...seen);
    } else if (event.kind === "outside-call" && event.name === "digitalRead") {
      const pin = pinOfValue(chip, event.arguments[0]);
      if (pin !== undefined) pins.push(pin);
    }
  }
  return pins;
}
