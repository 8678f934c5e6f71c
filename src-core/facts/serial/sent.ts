import type { Chip } from "../../model/chips/chip.ts";
import { visibleRange } from "../../reader/tokens.ts";
import { delayOf } from "../board/delay-calls.ts";
import { pinsOfVector } from "../pins/pin-names.ts";
import { interruptPin } from "../ps2/handler-pins.ts";
import type { BranchEvent, EntryWalk, Event, LoopEvent, OutsideCall, Walk } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import { tracesOf } from "../walk/unknowns.ts";
import { type ControlLines, isHarmlessAssembly } from "./control-lines.ts";
import { forwardsAtOnce, type MouseHost } from "./forwarding.ts";
import type { Line } from "./mouse-port.ts";
import type { Asked, RunByte, Sent, SentByte, SentRun, Wait } from "./serial-facts.ts";

/** What leaves by the line, entry by entry, in the order of the text. */
export function sentOn(
  line: Line,
  walk: Walk,
  controls: ControlLines,
  clockHz: number | undefined,
  host: MouseHost,
  chip: Chip | undefined,
): Sent {
  const isFed = walk.entries.some((each) => isFeeder(each, line, walk, chip));
  const collector = new Collector(line, controls, clockHz, isFed);
  for (const each of walk.entries) collector.entry(each);
  const mayBeMore = walk.cutShort || walk.entries.some(({ events }) => !eachOnce(events).every(isRead));
  return {
    runs: collector.runs,
    others: collector.others,
    mayBeMore,
    hasProgram: walk.entries.some(({ entry }) => entry.kind === "program"),
    mayStartAnew: walk.entries.some(({ events }) => eachOnce(events).some(startsAnew)),
    forwards: forwardsAtOnce(walk, line, host, chip),
  };
}

/** A write to the watchdog's register, which `wdt_enable` makes, or a call through a pointer, as to address 0. */
function startsAnew(event: Event): boolean {
  if (event.kind === "outside-call") return event.name.startsWith("wdt_enable");
  if (event.kind === "register-write")
    return event.register.name === "WDTCSR" || event.register.name === "WDTCR";
  return event.kind === "not-followed" || (event.kind === "assembly" && /jmp/.test(event.text));
}

/**
 * An interrupt handler that sends, and runs neither because of the mouse nor because of the PC, but when the line can take
 * more or some time has gone by: what is sent elsewhere may be the first byte of what it goes on with.
 */
function isFeeder({ entry, events }: EntryWalk, line: Line, walk: Walk, chip: Chip | undefined): boolean {
  if (entry.kind !== "interrupt" || interruptPin(entry, walk.entries, chip) !== undefined) return false;
  if (entry.vector !== undefined && pinsOfVector(chip, entry.vector).length > 0) return false;
  return eachOnce(events).some((event) => line.sentBy(event) !== undefined);
}

/** Whether all that an event does is read here. */
function isRead(event: Event): boolean {
  switch (event.kind) {
    case "not-followed":
      return false;
    case "assembly":
      return isHarmlessAssembly(event.text);
    case "outside-call":
      return event.origin === "core" || delayOf(event, undefined) !== undefined;
    default:
      return true;
  }
}

/** What has led to where the collector stands. */
interface Way {
  readonly asked: Asked | undefined;
  readonly again: boolean;
}

class Collector {
  readonly runs: SentRun[] = [];
  readonly others: SentByte[] = [];
  readonly #line: Line;
  readonly #controls: ControlLines;
  readonly #clockHz: number | undefined;
  readonly #isFed: boolean;
  #way: Way = { asked: undefined, again: false };
  #run: { readonly bytes: RunByte[]; readonly way: Way; readonly opened: boolean } | undefined = undefined;
  #afterUnknown = false;
  #waits: Wait[] = [];
  readonly #idle = new WeakMap<readonly Event[], boolean>();
  readonly #silent = new WeakMap<readonly Event[], boolean>();

  constructor(line: Line, controls: ControlLines, clockHz: number | undefined, isFed: boolean) {
    this.#line = line;
    this.#controls = controls;
    this.#clockHz = clockHz;
    this.#isFed = isFed;
  }

  entry(each: EntryWalk): void {
    const { entry, events } = each;
    const { at } = entry.function;
    const asked: Asked | undefined = this.#controls.isHandler(each)
      ? { state: undefined, span: visibleRange(at.first, at.last) }
      : undefined;
    this.#way = { asked, again: entry.kind !== "program" };
    this.#waits = [];
    this.#follow(events);
    this.#end(true);
  }

  #follow(events: readonly Event[]): void {
    for (const event of events) this.#one(event);
  }

  #one(event: Event): void {
    const sending = this.#line.sentBy(event);
    if (sending !== undefined) {
      if (sending === "unseen") {
        const span = visibleRange(event.at.first, event.at.last);
        this.#unknown({ byte: undefined, span, expression: undefined });
      } else for (const byte of sending) this.#send(byte);
      return;
    }
    switch (event.kind) {
      case "call": {
        if (this.#isSilent(event.events)) break;
        // What is known in a function by what it has returned for is not known behind it.
        const way = this.#way;
        this.#follow(event.events);
        this.#way = way;
        break;
      }
      case "branch":
        this.#branch(event);
        break;
      case "loop":
        this.#loop(event);
        break;
      case "outside-call":
        this.#wait(event);
        break;
      default:
    }
  }

  #send(sent: SentByte): void {
    const { byte } = sent;
    if (byte === undefined) {
      this.#unknown(sent);
      return;
    }
    this.#run ??= { bytes: [], way: this.#way, opened: !this.#afterUnknown };
    const waits = this.#run.bytes.length === 0 && this.#way.asked === undefined ? [] : this.#waits;
    this.#run.bytes.push({ ...sent, byte, waits });
    this.#waits = [];
  }

  #unknown(sent: SentByte): void {
    this.#end(false);
    this.#afterUnknown = true;
    this.others.push(sent);
    this.#waits = [];
  }

  /** `closed`: nothing can follow at once, but what an interrupt handler sends. */
  #end(closed: boolean): void {
    if (closed) this.#afterUnknown = false;
    if (this.#run === undefined) return;
    const { bytes, way, opened } = this.#run;
    this.runs.push({ bytes, asked: way.asked, again: way.again, opened, closed: closed && !this.#isFed });
    this.#run = undefined;
  }

  #wait(call: OutsideCall): void {
    const us = delayOf(call, this.#clockHz)?.us;
    if (us === undefined) return;
    const expression = delayOf(call, this.#clockHz)?.length?.from ?? call.expressions[0];
    const at = expression?.at ?? call.at;
    const span = visibleRange(at.first, at.last);
    this.#waits = added(this.#waits, { us, each: us, span, expression, name: call.name });
  }

  #branch(branch: BranchEvent): void {
    const condition = branch.condition ?? branch.selector;
    const concerns = condition !== undefined && this.#controls.concern(tracesOf(condition));
    const isBusy = branch.sides.some((side) => !this.#isIdle(side));
    if (!isBusy) {
      // Sides that send nothing do not part what comes before from what comes after.
      if (concerns) this.#seenBehind(branch);
      return;
    }
    this.#end(false);
    const { asked, again } = this.#way;
    const waits = this.#waits;
    for (const [index, side] of branch.sides.entries()) {
      const seen = concerns ? this.#seen(branch, index === 0) : asked;
      this.#way = { asked: seen, again };
      this.#waits = concerns ? [] : [...waits];
      this.#follow(side);
      this.#end(true);
    }
    this.#way = { asked, again };
    this.#waits = [];
    if (concerns) this.#seenBehind(branch);
  }

  /** A line is known behind a condition one side of which leaves. */
  #seenBehind(branch: BranchEvent): void {
    const leaving = branch.sides.findIndex((side) => side.at(-1)?.kind === "leave");
    if (leaving < 0) return;
    this.#way = { ...this.#way, asked: this.#seen(branch, leaving !== 0) };
    this.#waits = [];
  }

  #seen(branch: BranchEvent, holds: boolean): Asked {
    const { first, last } = branch.at;
    return {
      state: this.#controls.stateWhere(branch.condition, holds),
      span: visibleRange(first, last),
    };
  }

  #loop(loop: LoopEvent): void {
    if (loop.form === "waiting") {
      if (!this.#controls.concern(loop.waitsFor)) return;
      // What is sent then hangs on the PC.
      this.#end(true);
      const { first, last } = loop.at;
      const state = this.#controls.stateWhere(loop.condition, false);
      this.#way = { ...this.#way, asked: { state, span: visibleRange(first, last) } };
      this.#waits = [];
      return;
    }
    const isIdle = loop.passes.every((pass) => this.#isIdle(pass));
    if (loop.form === "counted" && loop.turns !== undefined) {
      this.#countedTurns(loop, loop.turns, isIdle);
      return;
    }
    if (isIdle && loop.form !== "endless") {
      if (!this.#controls.concern(loop.waitsFor)) return;
      this.#way = {
        ...this.#way,
        asked: { state: undefined, span: visibleRange(loop.at.first, loop.at.last) },
      };
      this.#waits = [];
      return;
    }
    this.#end(loop.form === "endless");
    const way = this.#way;
    for (const pass of loop.passes) {
      this.#way = { asked: undefined, again: true };
      this.#waits = [];
      this.#follow(pass);
      this.#end(true);
    }
    this.#way = way;
    this.#waits = [];
  }

  /** All turns in order; where the last one walked stands for others, what it waits counts as often. */
  #countedTurns(loop: LoopEvent, turns: number, isIdle: boolean): void {
    const left = Math.max(0, turns - loop.passes.length);
    const [before, way] = [this.#waits, this.#way];
    if (!isIdle && left > 0) {
      this.#end(false);
      this.#way = { ...way, again: true };
    }
    for (const [index, pass] of loop.passes.entries()) {
      const isLast = index === loop.passes.length - 1;
      if (!isLast || left === 0 || !isIdle) {
        this.#follow(pass);
        continue;
      }
      const since = this.#waits;
      this.#waits = [];
      this.#follow(pass);
      const own = this.#waits;
      this.#waits = since;
      for (const wait of own) this.#waits = added(this.#waits, { ...wait, us: wait.us * (1 + left) });
    }
    if (isIdle || left === 0) return;
    this.#end(false);
    this.#way = way;
    this.#waits = before;
  }

  /** None of the events, nor of those in them, has anything to do with what is sent, and when. */
  #isSilent(events: readonly Event[]): boolean {
    let silent = this.#silent.get(events);
    if (silent === undefined) {
      silent = this.#isIdle(events) && events.every((event) => this.#saysNothing(event));
      this.#silent.set(events, silent);
    }
    return silent;
  }

  #saysNothing(event: Event): boolean {
    switch (event.kind) {
      case "call":
        return this.#isSilent(event.events);
      case "branch": {
        const condition = event.condition ?? event.selector;
        const concerns = condition !== undefined && this.#controls.concern(tracesOf(condition));
        return !concerns && event.sides.every((side) => this.#isSilent(side));
      }
      case "loop":
        return !this.#controls.concern(event.waitsFor) && event.passes.every((pass) => this.#isSilent(pass));
      case "outside-call":
        return delayOf(event, undefined) === undefined;
      default:
        return true;
    }
  }

  /** None of the events, nor of those in them, sends anything. */
  #isIdle(events: readonly Event[]): boolean {
    let idle = this.#idle.get(events);
    if (idle === undefined) {
      idle = events.every((event) => this.#sendsNothing(event));
      this.#idle.set(events, idle);
    }
    return idle;
  }

  #sendsNothing(event: Event): boolean {
    if (this.#line.sentBy(event) !== undefined) return false;
    switch (event.kind) {
      case "call":
        return this.#isIdle(event.events);
      case "branch":
        return event.sides.every((side) => this.#isIdle(side));
      case "loop":
        return event.passes.every((pass) => this.#isIdle(pass));
      default:
        return true;
    }
  }
}

function added(waits: readonly Wait[], wait: Wait): Wait[] {
  const at = waits.findIndex(
    ({ span }) =>
      span.file === wait.span.file && span.start === wait.span.start && span.end === wait.span.end,
  );
  const held = waits[at];
  if (held === undefined) return [...waits, wait];
  return waits.with(at, { ...held, us: held.us + wait.us });
}
