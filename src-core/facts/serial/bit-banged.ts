import type { Span } from "../../finding.ts";
import type { PinName } from "../pins/pin-change.ts";
import type { Event, Walk } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import type { LineStep, LineSteps } from "./line-steps.ts";
import type { BitBangedByte, TimedBit } from "./serial-facts.ts";

/** What a frame on a pin may look like. */
export interface FrameSearch {
  /** The pin that a note names; bytes on other pins are not looked for then. */
  readonly pin: PinName | undefined;
  /** Data bits where the text does not tell them apart from the stop bit. */
  readonly dataBits: number;
  readonly steps: LineSteps;
}

/** A level, and how long it is held; undefined where no delay follows. */
interface Held {
  readonly level: 0 | 1 | undefined;
  readonly span: Span;
  readonly delay: Extract<LineStep, { kind: "delay" }> | undefined;
}

const FEWEST_DATA_BITS = 5;
const MOST_DATA_BITS = 10;

/**
 * Bytes that the program sends bit by bit: a start bit, data bits that each last as long as a delay says, and a
 * level opposite to the start bit after them, all on one pin and with nothing in between that may take any time.
 */
export function bitBangedBytes(walk: Walk, search: FrameSearch): readonly BitBangedByte[] {
  const found = new Map<string, BitBangedByte>();
  for (const path of walk.entries.flatMap(({ events }) => pathsIn(events))) {
    for (const { pin, held } of runsOnOnePin(search.steps.of(path))) {
      if (search.pin !== undefined && pin !== search.pin) continue;
      for (const { at, length } of framesIn(held, search)) {
        const bits = timedBits(held.slice(at, at + length));
        const key = JSON.stringify([pin, ...bits.map(({ part, span }) => [part, span.file, span.start])]);
        const first = held[at];
        if (found.has(key) || first?.level === undefined) continue;
        const start = { level: first.level, span: first.span };
        found.set(key, { pin, said: search.pin !== undefined, start, bits });
      }
    }
  }
  return [...found.values()];
}

/** The whole, and each side of a branch: a byte that only one of them sends is not on a path that all have in common. */
function pathsIn(events: readonly Event[]): readonly (readonly Event[])[] {
  return [events, ...eachOnce(events).flatMap((event) => (event.kind === "branch" ? event.sides : []))];
}

/** The bytes that some code sends on the pin, in order; undefined for one that is not known. */
export function bytesOnPin(
  events: readonly Event[],
  search: FrameSearch & { readonly pin: PinName },
): readonly (number | undefined)[] {
  const bytes: (number | undefined)[] = [];
  for (const { pin, held } of runsOnOnePin(search.steps.of(events))) {
    if (pin !== search.pin) continue;
    for (const { at, length } of framesIn(held, search)) bytes.push(byteOf(held.slice(at, at + length)));
  }
  return bytes;
}

/** The lowest bit comes first; a bit is 1 where it is not as the start bit. */
function byteOf([start, ...rest]: readonly Held[]): number | undefined {
  let byte = 0;
  for (const [bit, { level }] of rest.slice(0, -1).entries()) {
    if (level === undefined) return undefined;
    if (level !== start?.level) byte += 2 ** bit;
  }
  return byte;
}

interface Run {
  readonly pin: PinName;
  readonly held: readonly Held[];
}

/** Stretches in which nothing happens but levels of one pin, and delays. */
function* runsOnOnePin(steps: readonly LineStep[]): Generator<Run> {
  let pin: PinName | undefined;
  let held: Held[] = [];
  const end = function* (): Generator<Run> {
    if (pin !== undefined && held.length > 0) yield { pin, held };
    pin = undefined;
    held = [];
  };
  for (const step of steps) {
    const last = held.at(-1);
    if (step.kind === "anything") yield* end();
    else if (step.kind === "delay") {
      if (last === undefined) continue;
      const us = (last.delay?.us ?? 0) + step.us;
      held[held.length - 1] = { ...last, delay: { ...(last.delay ?? step), us } };
    } else {
      if (pin !== undefined && pin !== step.pin) yield* end();
      pin = step.pin;
      if (last !== undefined && last.delay === undefined && held.length > 0) held.pop();
      held.push({ level: step.level, span: step.span, delay: undefined });
    }
  }
  yield* end();
}

interface Frame {
  /** Index of its start bit. */
  readonly at: number;
  /** Its stop bit included. */
  readonly length: number;
}

function* framesIn(held: readonly Held[], search: FrameSearch): Generator<Frame> {
  for (let at = 0; at < held.length; at++) {
    const length = frameLength(held, at, search);
    if (length === undefined) continue;
    yield { at, length };
    at += length - 1;
  }
}

function timedBits(frame: readonly Held[]): readonly TimedBit[] {
  return frame.flatMap(({ delay }, index): TimedBit[] => {
    if (delay === undefined) return [];
    const part = index === 0 ? "start" : index === frame.length - 1 ? "stop" : "data";
    return [{ part, us: delay.us, span: delay.span, expression: delay.expression }];
  });
}

/** Number of levels of the frame that begins at `at`, its stop bit included. */
function frameLength(held: readonly Held[], at: number, search: FrameSearch): number | undefined {
  const start = held[at];
  if (start?.level === undefined || start.delay === undefined) return undefined;
  let unknown = 0;
  while (isTimedUnknown(held[at + 1 + unknown])) unknown++;
  const isShort = search.pin !== undefined && unknown < Math.max(FEWEST_DATA_BITS, search.dataBits);
  const counts = isShort ? dataBitsFor(search) : [unknown];
  const data = counts.find((count) => isFrame(held.slice(at, at + count + 3), count));
  return data === undefined ? undefined : data + 2;
}

function isTimedUnknown(bit: Held | undefined): boolean {
  return bit !== undefined && bit.level === undefined && bit.delay !== undefined;
}

/** Where the bits of a constant are seen, the text does not tell data bits from the stop bit. */
function dataBitsFor({ dataBits }: FrameSearch): readonly number[] {
  return [...new Set([dataBits, 8, 7, 9, 6, 5])];
}

/** A start bit, `count` timed bits, the opposite of the start bit, and then nothing or the next start bit. */
function isFrame(bits: readonly Held[], count: number): boolean {
  if (count < FEWEST_DATA_BITS || count > MOST_DATA_BITS) return false;
  const start = bits[0]?.level;
  const data = bits.slice(1, 1 + count);
  const next = bits[count + 2];
  if (start === undefined || data.length < count || data.some(({ delay }) => delay === undefined))
    return false;
  return bits[count + 1]?.level === 1 - start && (next === undefined || next.level === start);
}
