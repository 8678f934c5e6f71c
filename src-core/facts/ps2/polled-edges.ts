import type { Chip } from "../../model/chips/chip.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { EntryWalk, Event, LoopEvent } from "../walk/events.ts";
import { eachOnce, holding, inOrder } from "../walk/in-order.ts";
import { awaitedLevel } from "./awaited-level.ts";
import type { LineTraces } from "./line-traces.ts";
import type { PortPins } from "./port-pins.ts";
import type { WrongEdge } from "./ps2-facts.ts";
import { pinOfValue, pinsOfRegister } from "./watched-pins.ts";

/** A loop that takes or gives the bits of a byte turns at least eight times; with start, parity and stop bit eleven. */
const fewestTurns = 8;
const mostTurns = 11;

/**
 * Loops that take or give a bit a turn, and do so each time after they waited for the clock to rise. The mouse gives its
 * bits for the falling edge, and takes those of the host at the rising one.
 */
export function polledEdges(
  walks: readonly EntryWalk[],
  pins: PortPins,
  lines: LineTraces,
  chip: Chip | undefined,
): WrongEdge[] {
  if (pins.clock === undefined || pins.data === undefined) return [];
  const found: WrongEdge[] = [];
  const seen = new Set<LoopEvent["statement"]>();
  const changesData = holding(
    ["pin"],
    (event) => event.kind === "pin" && event.change.pin === pins.data?.pin,
  );
  for (const { events } of walks) {
    for (const event of eachOnce(events)) {
      if (event.kind !== "loop" || event.form !== "counted" || seen.has(event.statement)) continue;
      if (event.turns === undefined || event.turns < fewestTurns || event.turns > mostTurns) continue;
      seen.add(event.statement);
      const wrong = wrongInLoop(event, changesData, pins, lines, chip);
      if (wrong !== undefined) found.push(wrong);
    }
  }
  return found;
}

/** What is done with the data line, and the edge that was waited for before. */
interface Done {
  readonly what: "read" | "changed";
  readonly at: Event["at"];
  readonly edge: "fall" | "rise" | undefined;
}

function wrongInLoop(
  loop: LoopEvent,
  changesData: (events: readonly Event[]) => boolean,
  pins: PortPins,
  lines: LineTraces,
  chip: Chip | undefined,
): WrongEdge | undefined {
  const done: Done[] = [];
  let edge: Done["edge"];
  let isTurnsFirst = true;
  for (const pass of loop.passes) {
    let put: Event | undefined;
    for (const event of inOrder(pass)) {
      if (event.kind === "loop" && event !== loop) {
        const level = awaitedLevel(event, "clock", lines);
        if (level !== undefined) edge = level === "low" ? "fall" : "rise";
        put = undefined;
      } else if (event.kind === "call") {
        if (changesData(event.events)) put ??= event;
      } else if (event.kind === "pin" && event.change.pin === pins.data?.pin) {
        done.push({ what: "changed", at: (put ?? event).at, edge });
      } else if (readsData(event, pins, chip)) {
        done.push({ what: "read", at: event.at, edge });
      }
    }
    // What stood in front of the loop decides in its first turn.
    if (isTurnsFirst) done.length = 0;
    isTurnsFirst = false;
  }
  for (const what of ["changed", "read"] as const) {
    const same = done.filter((each) => each.what === what);
    const [first] = same;
    if (first === undefined || same.length < fewestTurns - 1) continue;
    if (same.every((each) => each.edge === "rise")) {
      return { kind: "polled", what, span: visibleRange(first.at.first, first.at.last) };
    }
  }
  return undefined;
}

export function readsData(event: Event, pins: PortPins, chip: Chip | undefined): boolean {
  if (event.kind === "register-read") {
    const seen = pinsOfRegister(event.register.name, event.mask);
    return seen.length === 1 && seen[0] === pins.data?.pin;
  }
  if (event.kind !== "outside-call" || event.name !== "digitalRead") return false;
  return pinOfValue(chip, event.arguments[0]) === pins.data?.pin;
}
