import { visibleRange } from "../../reader/tokens.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import { driveOf } from "../pins/pin-change.ts";
import type { CallEvent, EntryWalk, Event } from "../walk/events.ts";
import { eachOnce, holding } from "../walk/in-order.ts";
import { integerOf } from "../walk/values.ts";
import { awaitedLevel } from "./awaited-level.ts";
import type { LineTraces } from "./line-traces.ts";
import type { PortPins } from "./port-pins.ts";
import type { Sender, SentFrame } from "./ps2-facts.ts";

/**
 * Bytes whose bits can be followed from the call of a sender to the line: each is put there between two falling edges
 * of the clock that the sender waits for. One for each sender and byte.
 */
export function findSentFrames(
  walks: readonly EntryWalk[],
  senders: readonly Sender[],
  pins: PortPins,
  lines: LineTraces,
): SentFrame[] {
  const found = new Map<string, SentFrame>();
  // A call that does what an earlier one did holds the same events: it says no more than that.
  const followed = new Map<string, Set<readonly Event[]>>();
  const bySymbol = new Map(senders.map((sender) => [sender.function, sender]));
  if (senders.length === 0 || pins.clock === undefined || pins.data === undefined) return [];
  const drives = holding(["pin"], (event) => event.kind === "pin" && event.change.pin === pins.data?.pin);
  for (const { events } of walks) {
    for (const event of eachOnce(events)) {
      const sender = event.kind === "call" ? bySymbol.get(event.function) : undefined;
      if (event.kind !== "call" || sender === undefined) continue;
      const number = integerOf(event.arguments[sender.parameter]);
      if (number === undefined) continue;
      const byte = number & 0xff;
      const { first } = event.function.at;
      const key = `${first.file}:${first.start} ${byte}`;
      if (found.has(key)) continue;
      const alike = followed.get(key) ?? new Set();
      if (alike.has(event.events)) continue;
      followed.set(key, alike.add(event.events));
      const frame = frameOf(event, byte, { pins, lines, drives });
      if (frame !== undefined) found.set(key, frame);
    }
  }
  return [...found.values()];
}

/** Levels of the data line at the falling edges: start bit, eight data bits, parity bit. */
const edgesToParity = 10;

interface Surroundings {
  readonly pins: PortPins;
  readonly lines: LineTraces;
  /** Whether events change the data line. */
  readonly drives: (events: readonly Event[]) => boolean;
}

function frameOf(
  call: CallEvent,
  byte: number,
  { pins, lines, drives }: Surroundings,
): SentFrame | undefined {
  const levels: (0 | 1 | undefined)[] = [];
  let isClockHeld = false;
  let isRequested = false;
  let data: 0 | 1 | undefined;
  let put: Event | undefined;
  alongUntil(call.events, drives, (event) => {
    if (event.kind === "pin" && event.change.pin === pins.clock?.pin) {
      const isLow = driveOf(event.change.after) === "low";
      if (isClockHeld && !isLow) isRequested = true;
      isClockHeld = isLow;
    } else if (event.kind === "pin" && event.change.pin === pins.data?.pin) {
      data = levelDriven(driveOf(event.change.after));
    } else if (event.kind === "branch" && isChoice(event, drives)) {
      data = undefined;
    }
    if (!isRequested) return false;
    if (levels.length === edgesToParity - 1 && put === undefined && mayPut(event, drives)) put = event;
    if (event.kind !== "loop" || awaitedLevel(event, "clock", lines) !== "low") return false;
    levels.push(data);
    if (levels.length === edgesToParity) return true;
    put = undefined;
    return false;
  });
  return put === undefined ? undefined : whole(call.function, byte, levels, put);
}

/** Meets all events in order, without the sides of a choice, until one of them is `enough`; whether one was. */
function alongUntil(
  events: readonly Event[],
  drives: Surroundings["drives"],
  enough: (event: Event) => boolean,
): boolean {
  for (const event of events) {
    if (enough(event)) return true;
    if (event.kind === "call") {
      if (alongUntil(event.events, drives, enough)) return true;
    } else if (event.kind === "loop") {
      for (const pass of event.passes) if (alongUntil(pass, drives, enough)) return true;
    } else if (event.kind === "branch" && !isChoice(event, drives)) {
      for (const side of event.sides) if (alongUntil(side, drives, enough)) return true;
    }
  }
  return false;
}

/**
 * A branch that may leave the line at either level: it is changed on several sides, or on one without a wait for the clock.
 * One side that waits and changes it is the one on which all goes well.
 */
function isChoice({ sides }: Extract<Event, { kind: "branch" }>, drives: Surroundings["drives"]): boolean {
  const driving = sides.filter(drives);
  const [only] = driving;
  return driving.length > 1 || (only !== undefined && !eachOnce(only).some(({ kind }) => kind === "loop"));
}

const writesPin = /^(pinMode|digitalWrite)$/;

function mayPut(event: Event, drives: Surroundings["drives"]): boolean {
  if (event.kind === "call") return drives(event.events);
  return event.kind === "outside-call" ? writesPin.test(event.name) : event.kind === "register-write";
}

function levelDriven(drive: ReturnType<typeof driveOf>): 0 | 1 | undefined {
  if (drive === "low") return 0;
  return drive === "released" || drive === "pulled-up" || drive === "high" || drive === "released-unknown"
    ? 1
    : undefined;
}

/** The frame, if start bit and data bits are where they belong. */
function whole(
  symbol: FunctionSymbol,
  byte: number,
  levels: readonly (0 | 1 | undefined)[],
  put: Event,
): SentFrame | undefined {
  const [start, ...bits] = levels;
  const parity = bits[8];
  if (levels.length < edgesToParity || start !== 0 || parity === undefined) return undefined;
  for (let bit = 0; bit < 8; bit += 1) if (bits[bit] !== ((byte >> bit) & 1)) return undefined;
  return { byte, parity, put: visibleRange(put.at.first, put.at.last), sender: symbol };
}
