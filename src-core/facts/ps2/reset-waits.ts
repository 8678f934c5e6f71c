import type { Chip } from "../../model/chips/chip.ts";
import { commands } from "../../model/commands.ts";
import { quantity } from "../../model/quantities.ts";
import { selfTestPassed } from "../../model/replies.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { PinName } from "../pins/pin-change.ts";
import type { LoopEvent } from "../walk/events.ts";
import { inOrder } from "../walk/in-order.ts";
import { integerOf, numberOf, type Value } from "../walk/values.ts";
import type { ResetWait, WaitLimit } from "./ps2-facts.ts";
import type { DelayItem, PathItem, SendItem } from "./sending-paths.ts";
import { sentByte } from "./sequences.ts";
import type { WaitLimits } from "./wait-limits.ts";
import { pinOfTrace } from "./watched-pins.ts";

const reset = commands.find(({ replies }) => replies.includes("self-test-passed"));

/** What each reset command on a path is followed by, up to the next byte that is sent. */
export function resetWaits(
  path: readonly PathItem[],
  limits: WaitLimits,
  chip: Chip | undefined,
  clock: PinName | undefined,
): ResetWait[] {
  const waits: ResetWait[] = [];
  for (const [index, item] of path.entries()) {
    if (item.kind !== "send" || item.byte !== reset?.code || item.afterUnknown) continue;
    const next = path.findIndex((later, at) => at > index && later.kind === "send");
    const between = path.slice(index + 1, next < 0 ? undefined : next);
    waits.push(waitAfter(item, between, { limits, chip, clock, isLast: next < 0 }));
  }
  return waits;
}

interface Surroundings {
  readonly limits: WaitLimits;
  readonly chip: Chip | undefined;
  readonly clock: PinName | undefined;
  /** Nothing is sent afterwards. */
  readonly isLast: boolean;
}

/**
 * The longest that AA can take. The longest time-out is taken for that of AA, and delays in front of it count as
 * well; where delays behind it are longer, it is that of the acknowledge, and all delays count. One loop without a
 * limit is that for the acknowledge; a second one waits for AA as long as it takes.
 */
function waitAfter(sent: SendItem, between: readonly PathItem[], around: Surroundings): ResetWait {
  const byte = sentByte(sent, false);
  const unlimited: ResetWait = { sent: byte, ms: undefined, decides: undefined };
  const delays = delayRuns(between);
  const limits: WaitLimit[] = [];
  let replies = 0;
  let clockWaits = 0;
  let mostClockWaits = 0;
  for (const item of between) {
    if (item.kind === "unknown") return unlimited;
    if (item.kind === "delay") {
      const run = delays.get(item);
      if (run === undefined) continue;
      const limit = delayLimit(run);
      if (limit === undefined) return unlimited;
      limits.push(limit);
    }
    if (item.kind === "loop") {
      const { loop } = item;
      if (loop.form === "endless" || lastsUntilSelfTest(loop)) return unlimited;
      const waited = around.limits.of(item);
      if (waited === "nothing") continue;
      if (waited === "unlimited" && isClock(loop, around)) clockWaits += 1;
      else if (waited === "unlimited") replies += 1;
      else {
        limits.push(waited);
        if (waited.ms >= byteMs) clockWaits = 0;
      }
      mostClockWaits = Math.max(mostClockWaits, clockWaits);
    }
  }
  // A byte read bit by bit waits for the clock up to twice for each of its eleven bits, from its first on.
  if (replies > 1 || mostClockWaits > 2 * bitsOfByte + 4) return unlimited;
  // With nothing sent afterwards, what reads the answer may be anywhere.
  if (around.isLast && limits.length === 0) return unlimited;
  return { sent: byte, ...longestWait(limits) };
}

function longestWait(limits: readonly WaitLimit[]): Pick<ResetWait, "ms" | "decides"> {
  const timeOut = longest(limits.filter(({ kind }) => kind === "time-out"));
  const at = timeOut === undefined ? -1 : limits.indexOf(timeOut);
  const delaysOf = (some: readonly WaitLimit[]): number =>
    some.reduce((sum, { kind, ms }) => sum + (kind === "delay" ? ms : 0), 0);
  const behind = delaysOf(limits.slice(at + 1));
  const counted = timeOut !== undefined && behind <= timeOut.ms ? limits.slice(0, at + 1) : limits;
  return { ms: delaysOf(counted) + (timeOut?.ms ?? 0), decides: longest(counted) };
}

function longest(limits: readonly WaitLimit[]): WaitLimit | undefined {
  return limits.reduce<WaitLimit | undefined>(
    (most, each) => (most !== undefined && most.ms >= each.ms ? most : each),
    undefined,
  );
}

/** Start bit, eight data bits, parity bit, stop bit: frame table of the PS/2 article. */
const bitsOfByte = 11;

/** A shorter time-out is one for an edge within a byte, not for the byte. */
const byteMs = quantity("ps2.send-timeout")?.min ?? 0;

/** One delay, or the same one several times over. */
function delayLimit(items: readonly DelayItem[]): WaitLimit | undefined {
  const [item] = items;
  if (item?.us === undefined) return undefined;
  const times = items.reduce((sum, each) => sum + each.times, 0);
  const ms = item.us / 1000;
  const turns = item.given.find((value) => value.kind === "integer" && value.value === times)?.from;
  const expression = times > 1 && turns !== undefined ? turns : item.length?.from;
  const at = expression?.at ?? item.call.at;
  const value = numberOf(item.length);
  const each = value !== undefined && value > 0 ? (ms * times) / value : undefined;
  return {
    kind: "delay",
    ms: ms * times,
    looksMs: 0,
    unitMs: expression === turns ? ms : each,
    expression,
    span: visibleRange(at.first, at.last),
  };
}

/** Delays at the same place that follow each other, by the first of them. */
function delayRuns(items: readonly PathItem[]): ReadonlyMap<DelayItem, readonly DelayItem[]> {
  const runs = new Map<DelayItem, DelayItem[]>();
  let run: DelayItem[] = [];
  for (const item of items) {
    if (item.kind !== "delay") continue;
    if (run[0]?.call.at === item.call.at) run.push(item);
    else {
      run = [item];
      runs.set(item, run);
    }
  }
  return runs;
}

/** `while (read() != 0xAA)`: it takes as long as it takes. */
function lastsUntilSelfTest(loop: LoopEvent): boolean {
  if (loop.turns !== undefined) return false;
  const conditions: (Value | undefined)[] = [loop.condition];
  for (const event of inOrder(loop.passes[0] ?? [])) {
    if (event.kind === "branch") conditions.push(event.condition);
    if (event.kind === "time-test") return false;
  }
  return loop.atMost === undefined && conditions.some(isSelfTest);
}

function isSelfTest(value: Value | undefined): boolean {
  const compared = value?.kind === "unknown" ? value.compared : undefined;
  if (compared === undefined) return false;
  return [compared.left, compared.right].some((side) => integerOf(side) === selfTestPassed.code);
}

function isClock(loop: LoopEvent, around: Surroundings): boolean {
  if (around.clock === undefined) return false;
  return loop.waitsFor.some((trace) => pinOfTrace(around.chip, trace) === around.clock);
}
