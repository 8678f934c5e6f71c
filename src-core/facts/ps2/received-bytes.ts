import type { Program } from "../../reader/program/program.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import { driveOf } from "../pins/pin-change.ts";
import { eachEvent } from "../walk/each-event.ts";
import { reachedFrom } from "../walk/effects.ts";
import type { CallEvent, Event, Walk } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import type { Linkage } from "../walk/linkage.ts";
import { callersOf, type DataCode, dataCode } from "./data-code.ts";
import type { LineTraces } from "./line-traces.ts";
import { mayCheckParity } from "./parity-checks.ts";
import { readsData } from "./polled-edges.ts";
import type { PortPins } from "./port-pins.ts";
import type { Sender, UncheckedParity } from "./ps2-facts.ts";

/** The places where bits of bytes are taken whose parity nothing in the code can check; one for the whole project. */
export function uncheckedParity(
  program: Program,
  walk: Walk,
  pins: PortPins,
  lines: LineTraces,
  senders: readonly Sender[],
): UncheckedParity[] {
  if (pins.clock === undefined || pins.data === undefined || walk.cutShort) return [];
  const { linkage } = walk;
  const code = dataCode(walk, pins, program.chip);
  const bits = bitsTaken(program, walk, pins, lines);
  const sendingOnly = partsOfSenders(senders, code, linkage);
  for (const symbol of bits.takers) sendingOnly.delete(symbol);
  const [first] = bits.taken.filter(({ symbol }) => !sendingOnly.has(symbol));
  if (first === undefined) return [];
  const receiving = receivers(program, code, lines, linkage);
  for (const symbol of sendingOnly) receiving.delete(symbol);
  if (mayCheckParity(receiving, code, linkage)) return [];
  return [{ span: visibleRange(first.at.first, first.at.last) }];
}

/** What senders are made of: functions that they call and that change the data line. */
function partsOfSenders(senders: readonly Sender[], code: DataCode, linkage: Linkage): Set<FunctionSymbol> {
  const own = senders.flatMap(({ function: symbol }) => symbol ?? []);
  const parts = [...reachedFrom(own, linkage)].filter((symbol) => code.isSending(symbol));
  return new Set(parts.map((symbol) => linkage.definingSymbol(symbol)));
}

interface Taken {
  readonly at: At;
  readonly symbol: FunctionSymbol;
}

const dataBits = 8;

interface BitsTaken {
  readonly taken: readonly Taken[];
  /** Functions with a loop that takes bits and puts none on the line: a sender may well call one for the answer. */
  readonly takers: ReadonlySet<FunctionSymbol>;
}

/** Readings of the data line, one a bit: by a handler of the clock, or in a loop that waits for the clock each time. */
function bitsTaken(program: Program, walk: Walk, pins: PortPins, lines: LineTraces): BitsTaken {
  const { linkage } = walk;
  const handling = new Set<FunctionSymbol>();
  for (const { entry } of lines.handlers) {
    for (const symbol of reachedFrom([entry.function], linkage)) handling.add(linkage.definingSymbol(symbol));
  }
  const inLoops = new Set<At>();
  const inHelpers = new Set<At>();
  const takers = new Set<FunctionSymbol>();
  const readings: Taken[] = [];
  const takesBit = (event: Event): boolean =>
    event.kind === "call" ? doesNothingElse(event, takesBit) : readsData(event, pins, program.chip);
  eachEvent(walk, (event, symbol) => {
    if (event.kind === "loop" && event.form === "counted" && (event.turns ?? 0) >= dataBits) {
      const [pass] = event.passes;
      const inside = eachOnce(pass ?? []);
      if (!inside.some((each) => waitsForClock(each, lines))) return;
      const bits = inside.filter(takesBit);
      for (const { at } of bits) inLoops.add(at);
      if (bits.length > 0 && !inside.some((each) => pullsData(each, pins))) {
        takers.add(linkage.definingSymbol(symbol));
      }
    } else if (takesBit(event)) {
      readings.push({ at: event.at, symbol: linkage.definingSymbol(symbol) });
      if (event.kind === "call") for (const { at } of eachOnce(event.events)) inHelpers.add(at);
    }
  });
  const taken = readings.filter(
    ({ at, symbol }) => !inHelpers.has(at) && (inLoops.has(at) || handling.has(symbol)),
  );
  return { taken, takers };
}

/** A function that only gives the level is read where it is called. */
function doesNothingElse({ events }: CallEvent, takesBit: (event: Event) => boolean): boolean {
  return events.some(takesBit) && events.every((event) => event.kind === "leave" || takesBit(event));
}

function pullsData(event: Event, pins: PortPins): boolean {
  return event.kind === "pin" && event.change.pin === pins.data?.pin && driveOf(event.change.after) === "low";
}

function waitsForClock(event: Event, lines: LineTraces): boolean {
  return event.kind === "loop" && event.waitsFor.some((trace) => lines.lineOf(trace) === "clock");
}

/**
 * Code that bits or bytes of the mouse come to: what reads the line or what handlers wrote, their callers and the callers of
 * these, and all that they call.
 */
function receivers(
  program: Program,
  code: DataCode,
  lines: LineTraces,
  linkage: Linkage,
): Set<FunctionSymbol> {
  const all = new Set(program.functions.map((symbol) => linkage.definingSymbol(symbol)));
  let found = new Set<FunctionSymbol>(code.reads.keys());
  for (const symbol of all) {
    const body = linkage.definitionOf(symbol)?.body;
    if (body !== undefined && lines.areUsedIn(body)) found.add(symbol);
  }
  for (let level = 0; level < 2; level += 1) found = new Set([...found, ...callersOf(found, all, linkage)]);
  return new Set([...reachedFrom(found, linkage)].map((symbol) => linkage.definingSymbol(symbol)));
}
