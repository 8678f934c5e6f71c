import type { Span } from "../../finding.ts";
import { isStandIn, visibleRange } from "../../reader/tokens.ts";
import type { FunctionSymbol, TypedStatement } from "../../reader/typed/nodes.ts";
import { eachEvent } from "../walk/each-event.ts";
import type { Event, LoopEvent, Walk } from "../walk/events.ts";
import { eachOnce, holdingKind } from "../walk/in-order.ts";
import { tracesOf } from "../walk/unknowns.ts";
import type { Trace } from "../walk/values.ts";
import type { LineTrace, LineTraces } from "./line-traces.ts";
import type { EndlessWait } from "./ps2-facts.ts";
import { takesOut } from "./taken-out.ts";
import { countsItsWayOut } from "./ways-out.ts";

/**
 * Loops that nothing but an edge on the lines ends: neither a count nor a time nor something else. Those of one
 * function are told together.
 */
export function findEndlessWaits(walk: Walk, lines: LineTraces): EndlessWait[] {
  if (hasWatchdog(walk)) return [];
  const found = new Map<FunctionSymbol, EndlessWait[]>();
  const judged = new Set<string>();
  const leavesInside = holdingKind("leave");
  for (const { symbol, loop } of loopsOf(walk)) {
    const wait = waitOf(loop, lines, leavesInside);
    if (wait === undefined) continue;
    const place = spelledPlace(loop.statement);
    if (judged.has(place)) continue;
    judged.add(place);
    if (countsItsWayOut(loop.statement, lines, walk.linkage)) continue;
    if (takesOut(loop.statement, walk.linkage)) continue;
    const waits = found.get(symbol);
    const span = placeOf(loop.statement);
    if (waits === undefined) found.set(symbol, [{ on: wait, span, others: [] }]);
    else waits.push({ on: wait, span, others: [] });
  }
  return [...found.values()].flatMap(([first, ...others]) =>
    first === undefined ? [] : [{ ...first, others: others.map(({ span }) => span) }],
  );
}

type Holds = ReturnType<typeof holdingKind>;

interface Met {
  /** The function in whose body it stands. */
  readonly symbol: FunctionSymbol;
  readonly loop: LoopEvent;
}

function loopsOf(walk: Walk): Met[] {
  const met: Met[] = [];
  eachEvent(walk, (event, symbol) => {
    if (event.kind === "loop") met.push({ symbol, loop: event });
  });
  return met;
}

/** A macro of the project is written once, whoever uses it; one of a built-in header is told where it is used. */
function spelledPlace({ at: { first, last } }: TypedStatement): string {
  const { file, start } = isStandIn(first.file) ? visibleRange(first, last) : first;
  return `${file}:${start}`;
}

function placeOf(loop: TypedStatement): Span {
  const { first, last } = loop.at;
  if (isStandIn(first.file)) return visibleRange(first, last);
  const condition = loop.kind === "while" || loop.kind === "do" ? loop.condition : undefined;
  const at = condition === undefined || condition.kind === "integer" ? undefined : condition.at;
  return at === undefined ? visibleRange(first, first) : visibleRange(at.first, at.last);
}

/** What a loop waits for, where nothing but the lines can end it. */
function waitOf(loop: LoopEvent, lines: LineTraces, leavesInside: Holds): LineTrace | undefined {
  if (loop.form === "counted" || loop.turns !== undefined || loop.atMost !== undefined) return undefined;
  if (loop.condition === undefined && !loop.leaves) return undefined;
  const traces = [...loop.waitsFor, ...loop.passes.flatMap((pass) => leavingTraces(pass, leavesInside))];
  let wait: LineTrace | undefined;
  for (const trace of traces) {
    if (trace.kind === "parameter") continue;
    const of = lines.of(trace);
    if (of === undefined) return undefined;
    wait ??= of;
  }
  return wait;
}

/** What decides whether the turn is the last one, in its branches and in loops inside it. */
function leavingTraces(events: readonly Event[], leavesInside: Holds): readonly Trace[] {
  const inside = (some: readonly Event[]): readonly Trace[] => leavingTraces(some, leavesInside);
  return events.flatMap((event): readonly Trace[] => {
    switch (event.kind) {
      case "time-test":
        return tracesOf(event.elapsed);
      case "branch": {
        const leaves = event.sides.some(leavesInside);
        const decider = event.condition ?? event.selector;
        const own = leaves && decider !== undefined ? tracesOf(decider) : [];
        return [...own, ...event.sides.flatMap(inside)];
      }
      case "loop":
        return event.passes.flatMap(inside);
      default:
        return [];
    }
  });
}

/** A watchdog that is on ends every wait. */
function hasWatchdog(walk: Walk): boolean {
  return walk.entries.some(({ events }) =>
    eachOnce(events).some(
      (event) =>
        (event.kind === "outside-call" && event.name === "wdt_enable") ||
        (event.kind === "register-write" &&
          /^WDTC/.test(event.register.name) &&
          (event.ones & watchdogOn) !== 0),
    ),
  );
}

/** WDE, bit 3 of WDTCSR and of WDTCR. ATmega328P data sheet 10.9.2. */
const watchdogOn = 1 << 3;
