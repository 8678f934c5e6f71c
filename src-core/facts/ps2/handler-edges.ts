import type { Span } from "../../finding.ts";
import type { Chip } from "../../model/chips/chip.ts";
import { type InterruptSense, interruptSenses } from "../../model/chips/interrupt-senses.ts";
import { visibleRange } from "../../reader/tokens.ts";
import { pinsOfVector } from "../pins/pin-names.ts";
import { stepsIn } from "../serial/steps.ts";
import type { Entry, Event, RegisterWrite, Walk } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import { integerOf } from "../walk/values.ts";
import { certainLevel } from "./awaited-level.ts";
import type { LineTraces } from "./line-traces.ts";
import { readsData } from "./polled-edges.ts";
import type { PortPins } from "./port-pins.ts";
import type { EdgeSetting, WrongEdge } from "./ps2-facts.ts";
import { pinOfValue, pinsOfRegister } from "./watched-pins.ts";

/** Handlers of the clock that run at its rising edge, or at both and take bits while it is high. */
export function handlerEdges(
  walk: Walk,
  pins: PortPins,
  lines: LineTraces,
  chip: Chip | undefined,
): WrongEdge[] {
  const found: WrongEdge[] = [];
  for (const { entry, events } of lines.handlers) {
    if (!eachOnce(events).some((event) => readsData(event, pins, chip))) continue;
    const runs = whenItRuns(entry, walk, pins, chip);
    if (runs === undefined) continue;
    const { edge, span, set } = runs;
    if (edge === "falling") continue;
    if (edge === "rising" || !looksAtClock(events, pins, chip)) {
      found.push({ kind: "handler", edge, span, set });
      continue;
    }
    const at = readWhileHigh(events, pins, lines, chip);
    if (at !== undefined) found.push({ kind: "high", span: visibleRange(at.first, at.last) });
  }
  return found;
}

interface Runs {
  readonly edge: "rising" | "falling" | "both";
  readonly span: Span;
  readonly set: EdgeSetting;
}

function whenItRuns(entry: Entry, walk: Walk, pins: PortPins, chip: Chip | undefined): Runs | undefined {
  if (entry.attachedBy !== undefined) return attachedEdge(entry.attachedBy);
  const { vector } = entry;
  if (
    vector === undefined ||
    chip?.kind !== "avr" ||
    !pinsOfVector(chip, vector).includes(pins.clock?.pin ?? "")
  )
    return undefined;
  const pin = chip.pins.find(({ name }) => name === pins.clock?.pin);
  const external = pin?.externalInterrupt;
  const { at } = entry.function;
  const here = visibleRange(at.first, at.last);
  // A vector of an external interrupt serves one pin; one that serves more tells of any change.
  if (pinsOfVector(chip, vector).length > 1 || external === undefined) {
    return { edge: "both", span: here, set: { kind: "none" } };
  }
  const { sense } = external;
  if (sense === undefined) return undefined;
  const [high, low] = sense;
  if (high.register !== low.register) return undefined;
  const isSense = (event: Event): event is RegisterWrite =>
    event.kind === "register-write" && event.register.name === high.register;
  const writes = walk.entries
    .flatMap(({ events }) => stepsIn(events, isSense).map(({ event }) => event))
    .filter(isSense);
  const mask = (1 << high.bit) | (1 << low.bit);
  const senses = new Set(
    writes.map(({ after }) => ((after.known & mask) === mask ? after.ones & mask : undefined)),
  );
  const [only] = senses;
  const write = writes.at(-1);
  if (senses.size !== 1 || only === undefined || write === undefined) return undefined;
  const number = ((only >> high.bit) & 1) * 2 + ((only >> low.bit) & 1);
  const edge = edgeOf(number);
  const value = write.value.from?.at ?? write.at;
  return edge === undefined
    ? undefined
    : {
        edge,
        span: visibleRange(value.first, value.last),
        set: { kind: "register", write, falling: 1 << high.bit, mask },
      };
}

const edges = {
  "low level": undefined,
  "any change": "both",
  "falling edge": "falling",
  "rising edge": "rising",
} as const satisfies Readonly<Record<InterruptSense, Runs["edge"] | undefined>>;

/** Undefined for the low level, which is no edge, and for what is not known. */
function edgeOf(number: number | undefined): Runs["edge"] | undefined {
  const sense = number === undefined ? undefined : interruptSenses[number];
  return sense && edges[sense];
}

function attachedEdge(call: NonNullable<Entry["attachedBy"]>): Runs | undefined {
  const mode = call.expressions[2];
  const edge = edgeOf(integerOf(call.arguments[2]));
  if (call.name !== "attachInterrupt" || mode === undefined || edge === undefined) return undefined;
  return { edge, span: visibleRange(mode.at.first, mode.at.last), set: { kind: "mode" } };
}

/** Whether the level of the clock is looked at in any way, the whole port included. */
function looksAtClock(events: readonly Event[], pins: PortPins, chip: Chip | undefined): boolean {
  const clock = pins.clock?.pin ?? "";
  return eachOnce(events).some((event) => {
    if (event.kind === "register-read")
      return pinsOfRegister(event.register.name, event.mask).includes(clock);
    if (event.kind !== "outside-call" || event.name !== "digitalRead") return false;
    const pin = pinOfValue(chip, event.arguments[0]);
    return pin === undefined || pin === clock;
  });
}

/** The first reading of data, where all of them stand on paths on which the clock is high. */
function readWhileHigh(
  events: readonly Event[],
  pins: PortPins,
  lines: LineTraces,
  chip: Chip | undefined,
): Event["at"] | undefined {
  const readings: { readonly at: Event["at"]; readonly level: "high" | "low" | undefined }[] = [];
  const follow = (list: readonly Event[], given: "high" | "low" | undefined): void => {
    let level = given;
    for (const event of list) {
      if (readsData(event, pins, chip)) readings.push({ at: event.at, level });
      if (event.kind === "call") follow(event.events, level);
      else if (event.kind === "loop") for (const pass of event.passes) follow(pass, level);
      else if (event.kind === "branch") {
        const then = certainLevel(event.condition, "clock", lines);
        const otherwise = then && (then === "high" ? "low" : "high");
        const levels = [then ?? level, otherwise ?? level];
        event.sides.forEach((side, index) => {
          follow(side, levels[index] ?? level);
        });
        if (then === undefined) continue;
        if (ends(event.sides[0])) level = otherwise;
        else if (ends(event.sides[1])) level = then;
      }
    }
  };
  follow(events, undefined);
  const [first] = readings;
  return readings.every(({ level }) => level === "high") ? first?.at : undefined;
}

function ends(side: readonly Event[] | undefined): boolean {
  return side?.at(-1)?.kind === "leave";
}
