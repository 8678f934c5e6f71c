import type { Chip } from "../../model/chips/chip.ts";
import type { Ps2Words, Said } from "../../notes/wires.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { PinName } from "../pins/pin-change.ts";
import { pinOfWord, pinText } from "../pins/pin-names.ts";
import type { EntryWalk } from "../walk/events.ts";
import { inOrder } from "../walk/in-order.ts";
import { findHandlerPins, interruptPin } from "./handler-pins.ts";
import type { Ps2Pin } from "./ps2-facts.ts";
import type { Request } from "./requests.ts";
import { mayWaitForFall } from "./wait-levels.ts";
import { pinOfTrace } from "./watched-pins.ts";

/** The two pins of the PS/2 port, as far as they are known. */
export interface PortPins {
  readonly clock: Ps2Pin | undefined;
  readonly data: Ps2Pin | undefined;
}

/** Pins that were said win; what was not said is inferred, one line from the other where only one was said. */
export function portPins(
  words: Ps2Words,
  walks: readonly EntryWalk[],
  requests: readonly Request[],
  chip: Chip | undefined,
): PortPins {
  const clock = saidPin(words.clock, chip);
  const data = saidPin(words.data, chip);
  if (clock !== undefined && data !== undefined) return { clock, data };
  // A word that means nothing leaves its line unknown: what it meant is not for the code to say.
  const inferred = inferredPins(walks, requests, chip, clock?.pin, data?.pin);
  return {
    clock: clock ?? (words.clock === undefined ? inferred?.clock : undefined),
    data: data ?? (words.data === undefined ? inferred?.data : undefined),
  };
}

function saidPin(said: Said<string> | undefined, chip: Chip | undefined): Ps2Pin | undefined {
  if (said === undefined) return undefined;
  const pin = pinOfWord(chip, said.value);
  return pin === undefined ? undefined : { pin, text: pinText(chip, pin), by: "said", span: said.span };
}

function inferredPins(
  walks: readonly EntryWalk[],
  requests: readonly Request[],
  chip: Chip | undefined,
  clock: PinName | undefined,
  data: PinName | undefined,
): PortPins | undefined {
  const fits = (pair: { readonly clock: PinName; readonly data: PinName }): boolean =>
    (clock === undefined || pair.clock === clock) && (data === undefined || pair.data === data);
  const byRequest = bestRequest(requests.filter(fits), walks, chip);
  if (byRequest !== undefined) return byRequest;
  const handlers = findHandlerPins(walks, chip).filter(fits);
  const [first] = handlers;
  // Handlers of several pairs of pins: which of them is the PS/2 port is not known.
  if (
    first === undefined ||
    handlers.some((each) => each.clock !== first.clock || each.data !== first.data)
  ) {
    return undefined;
  }
  const span = visibleRange(first.at.first, first.at.last);
  return {
    clock: { pin: first.clock, text: pinText(chip, first.clock), by: "interrupt", span },
    data: { pin: first.data, text: pinText(chip, first.data), by: "interrupt", span },
  };
}

/** The request to send whose first pin the firmware waits on most, or that makes an interrupt. */
function bestRequest(
  requests: readonly Request[],
  walks: readonly EntryWalk[],
  chip: Chip | undefined,
): PortPins | undefined {
  const waits = waitsOnPins(walks, chip);
  let best: { readonly request: Request; readonly waits: number } | undefined;
  for (const request of requests) {
    const count = request.inOrder ? (waits.get(request.clock) ?? 0) : 0;
    if (count > (best?.waits ?? 0)) best = { request, waits: count };
  }
  if (best === undefined) return undefined;
  const { request } = best;
  const span = visibleRange(request.low.at.first, request.low.at.last);
  return {
    clock: { pin: request.clock, text: pinText(chip, request.clock), by: "request", span },
    data: { pin: request.data, text: pinText(chip, request.data), by: "request", span },
  };
}

/** How often each pin is waited on to fall; an interrupt counts as one wait. */
function waitsOnPins(walks: readonly EntryWalk[], chip: Chip | undefined): ReadonlyMap<PinName, number> {
  const waits = new Map<PinName, number>();
  const count = (pin: PinName | undefined): void => {
    if (pin !== undefined) waits.set(pin, (waits.get(pin) ?? 0) + 1);
  };
  for (const { entry, events } of walks) {
    if (entry.kind === "interrupt") count(interruptPin(entry, walks, chip));
    for (const event of inOrder(events)) {
      if (event.kind !== "loop") continue;
      const pins = new Set(event.waitsFor.map((trace) => pinOfTrace(chip, trace)));
      for (const pin of pins) if (pin !== undefined && mayWaitForFall(event, pin, chip)) count(pin);
    }
  }
  return waits;
}
