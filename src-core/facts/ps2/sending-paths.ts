import { commandByCode } from "../../model/commands.ts";
import { delayOf } from "../board/delay-calls.ts";
import type { BranchEvent, CallEvent, Entry, Event, LoopEvent, OutsideCall } from "../walk/events.ts";
import { holding, holdingKind } from "../walk/in-order.ts";
import { integerOf, type Value } from "../walk/values.ts";
import type { Sender } from "./ps2-facts.ts";
import { sentOnce } from "./resends.ts";

/** What happens along a path, as far as it has to do with talking to the mouse. */
export type PathItem =
  | SendItem
  | DelayItem
  /** A loop; what it waits for is in the event. */
  | LoopItem
  /** Something of which nobody knows how long it takes or what it does. */
  | { readonly kind: "unknown" };

export interface DelayItem {
  readonly kind: "delay";
  /** Microseconds of one time round; undefined where not known. */
  readonly us: number | undefined;
  readonly times: number;
  readonly call: OutsideCall;
  readonly length: Value | undefined;
  /** What the function around it was given. */
  readonly given: readonly Value[];
}

export interface LoopItem {
  readonly kind: "loop";
  readonly loop: LoopEvent;
  readonly depth: number;
  /** What the function around it was given. */
  readonly given: readonly Value[];
}

export interface SendItem {
  readonly kind: "send";
  readonly byte: number | undefined;
  readonly value: Value | undefined;
  readonly event: CallEvent | OutsideCall;
  /** The calls around it, outermost first. */
  readonly calls: readonly CallEvent[];
  readonly sender: Sender;
  readonly afterUnknown: boolean;
}

/** Where a path stands that was followed so far. */
interface Path {
  readonly items: PathItem[];
  end: "through" | "return" | "break" | "continue" | Jump;
}

/** On its way to a label further on. */
interface Jump {
  readonly to: string | undefined;
}

/** More alternatives than these are not told apart. */
const mostPaths = 24;

/**
 * The paths of an entry on which bytes are sent. Where one side of a condition sends and the other does
 * nothing of the kind, the side that sends is taken: it is the one on which all goes well.
 */
export function sendingPaths(
  entry: Entry,
  events: readonly Event[],
  senders: readonly Sender[],
): PathItem[][] {
  const own = senders.find((sender) => sender.function === entry.function);
  if (own !== undefined) return [];
  const finder = new PathFinder(senders);
  if (!finder.maySend(events)) return [];
  const paths = finder.through(events);
  return paths.map(({ items }) => items).filter((items) => items.some(({ kind }) => kind === "send"));
}

class PathFinder {
  readonly #byFunction = new Map<unknown, Sender>();
  readonly #byName = new Map<string, Sender>();
  readonly #calls: CallEvent[] = [];
  /** Whether a sender is called by these events or inside them. */
  readonly maySend: (events: readonly Event[]) => boolean;
  /** Whether there is anything in these events that a path tells of. */
  readonly #isTold: (events: readonly Event[]) => boolean;
  #depth = 0;

  constructor(senders: readonly Sender[]) {
    for (const sender of senders) {
      if (sender.function !== undefined) this.#byFunction.set(sender.function, sender);
      if (sender.by === "its name") this.#byName.set(sender.name, sender);
    }
    const sends = (event: Event): boolean =>
      (event.kind === "call" && this.#byFunction.has(event.function)) ||
      (event.kind === "outside-call" && this.#byName.has(event.name));
    this.maySend = holding(["call", "outside-call"], sends);
    const mayHoldItem = holdingKind("loop", "outside-call", "not-followed");
    // A jump ends a path elsewhere than behind its function.
    const jumps = holding(["leave"], (event) => event.kind === "leave" && event.how === "goto");
    this.#isTold = (events) => mayHoldItem(events) || jumps(events) || this.maySend(events);
  }

  through(events: readonly Event[]): Path[] {
    let paths: Path[] = [{ items: [], end: "through" }];
    for (const event of events) {
      if (event.kind === "label") paths = paths.map((path) => atLabel(path, event.name));
      if (!paths.some(({ end }) => end === "through")) continue;
      const continued = this.#after(event);
      if (continued === undefined) continue;
      if (paths.length === 1) {
        paths = joined(paths, continued);
      } else {
        const open = paths.filter(({ end }) => end === "through");
        paths = [...paths.filter(({ end }) => end !== "through"), ...joined(open, continued)];
      }
      if (paths.length > mostPaths) paths = longest(paths);
    }
    return paths;
  }

  /** How paths go on through an event; undefined where it adds nothing. */
  #after(event: Event): Path[] | undefined {
    switch (event.kind) {
      case "call": {
        const sender = this.#byFunction.get(event.function);
        if (sender !== undefined) return single(sendItem(event, sender, [...this.#calls]));
        if (!this.#isTold(event.events)) return undefined;
        this.#calls.push(event);
        const inside = this.through(event.events);
        this.#calls.pop();
        return inside.map(({ items, end }) => ({
          // Where a jump leads back, nobody knows how often what follows it is done.
          items: sentOnce(typeof end === "object" ? [...items, { kind: "unknown" }] : items, event.arguments),
          end: "through",
        }));
      }
      case "branch":
        return this.#sides(event);
      case "loop":
        return this.#turns(event);
      case "leave":
        return [{ items: [], end: event.how === "goto" ? { to: event.label } : event.how }];
      case "outside-call":
        return this.#outsideCall(event);
      case "not-followed":
        return single({ kind: "unknown" });
      default:
        return undefined;
    }
  }

  #outsideCall(event: OutsideCall): Path[] | undefined {
    const sender = this.#byName.get(event.name);
    if (sender !== undefined) return single(sendItem(event, sender, [...this.#calls]));
    const delay = delayOf(event, undefined);
    if (delay !== undefined)
      return single({
        kind: "delay",
        us: delay.us,
        times: 1,
        call: event,
        length: delay.length,
        given: this.#given(),
      });
    return event.origin === "core" ? undefined : single({ kind: "unknown" });
  }

  #sides(branch: BranchEvent): Path[] {
    const sides = branch.sides.map((side) => this.through(side));
    const isSwitch = branch.selector !== undefined;
    const behind = isSwitch ? sides.map((side) => side.map(withoutBreak)) : sides;
    const sending = behind.filter((side) => side.some(sends));
    if (sending.length > 0) {
      const goesOn = sending.some((side) => side.some(({ end }) => end === "through"));
      const others = goesOn ? [] : behind.filter((side) => !side.some(sends)).map(best);
      return [...sending.flat(), ...others];
    }
    const going = behind.filter((side) => side.some(({ end }) => end === "through"));
    const candidates = (going.length > 0 ? going : behind).map(best);
    return [best(candidates)];
  }

  #turns(loop: LoopEvent): Path[] {
    this.#depth += 1;
    const item: LoopItem = { kind: "loop", loop, depth: this.#depth, given: this.#given() };
    let paths: Path[] = [{ items: [item], end: "through" }];
    for (const pass of this.#isRetry(loop) ? loop.passes.slice(0, 1) : loop.passes) {
      const open = paths.filter(({ end }) => end === "through");
      let turn = this.through(pass).map((path) =>
        path.end === "continue" ? { ...path, end: "through" as const } : path,
      );
      if (loop.form !== "counted" && turn.some(endsInArgument) && !sendsOneByte(turn))
        turn = turn.map(startsAfterUnknown);
      if (isTimeOut(loop)) turn = turn.map(withoutDelays);
      if (pass === loop.passes.at(-1)) turn = turn.map((path) => repeatedDelays(path, loop));
      paths = [...paths.filter(({ end }) => end !== "through"), ...joined(open, turn)];
      if (paths.length > mostPaths) paths = longest(paths);
    }
    this.#depth -= 1;
    return paths.map(withoutBreak);
  }

  #given(): readonly Value[] {
    return this.#calls.at(-1)?.arguments ?? [];
  }

  /**
   * `for (tries = 0; tries < 3; tries++) if (send(c) && answer() == ACK) return true;`: one turn is the good case. So it is
   * where nobody knows whether there is a second turn.
   */
  #isRetry({ form, passes }: LoopEvent): boolean {
    const [first, second] = passes;
    if (first === undefined || second === undefined) return false;
    if (!this.maySend(first)) return false;
    if (form === "counted" && !first.some(leavesInSuccess)) return false;
    const sent = this.#sentIn(first);
    const again = this.#sentIn(second);
    return sent.length > 0 && sent.length === again.length && sent.every((from, at) => from === again[at]);
  }

  /** Where the bytes of a turn are written in the source. */
  #sentIn(pass: readonly Event[]): unknown[] {
    const longestPath = longest(this.through(pass))[0];
    return (longestPath?.items ?? []).flatMap((item) =>
      item.kind === "send" ? [item.value?.from ?? item.event.at] : [],
    );
  }
}

/** Failure is told by zero, and a turn that failed is followed by the next one. */
function leavesInSuccess(event: Event): boolean {
  if (event.kind === "branch") return event.sides.some((side) => side.some(leavesInSuccess));
  if (event.kind !== "leave") return false;
  return event.how === "break" || (event.how === "return" && integerOf(event.value) !== 0);
}

/** A loop that a counter ends at the latest is a wait as a whole: its delays are part of it. */
function isTimeOut({ form, atMost }: LoopEvent): boolean {
  return form !== "counted" && atMost !== undefined;
}

function withoutDelays({ items, end }: Path): Path {
  return { items: items.filter(({ kind }) => kind !== "delay"), end };
}

/** The turns that were not walked take as long as the last one. */
function repeatedDelays(path: Path, loop: LoopEvent): Path {
  const more = loop.form === "counted" && loop.turns !== undefined ? loop.turns - loop.passes.length : 0;
  if (more <= 0) return path;
  const items = path.items.map((item) =>
    item.kind === "delay" ? { ...item, times: item.times * (1 + more) } : item,
  );
  return { items, end: path.end };
}

function atLabel(path: Path, name: string): Path {
  return typeof path.end === "object" && path.end.to === name ? { ...path, end: "through" } : path;
}

function withoutBreak(path: Path): Path {
  return path.end === "break" ? { ...path, end: "through" } : path;
}

function single(item: PathItem): Path[] {
  return [{ items: [item], end: "through" }];
}

function joined(open: readonly Path[], continued: readonly Path[]): Path[] {
  const [only] = continued;
  if (continued.length === 1 && only !== undefined) {
    for (const path of open) {
      path.items.push(...only.items);
      path.end = only.end;
    }
    return [...open];
  }
  return open.flatMap((path) =>
    continued.map((more) => ({ items: [...path.items, ...more.items], end: more.end })),
  );
}

function sends(path: Path): boolean {
  return path.items.some(({ kind }) => kind === "send");
}

/** Of paths that send nothing, the one on which most happens; one that goes on before one that ends. */
function best(paths: readonly Path[]): Path {
  let found: Path = paths[0] ?? { items: [], end: "through" };
  for (const path of paths) {
    const isThrough = path.end === "through";
    if (isThrough !== (found.end === "through") ? isThrough : path.items.length > found.items.length)
      found = path;
  }
  return { items: [...found.items], end: found.end };
}

function longest(paths: readonly Path[]): Path[] {
  const count = (path: Path): number => path.items.filter(({ kind }) => kind === "send").length;
  return [...paths].sort((a, b) => count(b) - count(a)).slice(0, mostPaths);
}

function sendItem(event: CallEvent | OutsideCall, sender: Sender, calls: readonly CallEvent[]): SendItem {
  const value = event.arguments[sender.parameter];
  const number = integerOf(value);
  return {
    kind: "send",
    byte: number === undefined ? undefined : number & 0xff,
    value,
    event,
    calls,
    sender,
    afterUnknown: false,
  };
}

/** Whether the mouse waits for an argument at the end of a path. */
function endsInArgument(path: Path): boolean {
  const last = path.items.findLast((item) => item.kind === "send");
  if (last === undefined) return false;
  return last.byte === undefined || (commandByCode(last.byte)?.argument ?? "none") !== "none";
}

/** Whether the turn before a turn that sends can have sent nothing but the same byte, which is then sent again. */
function sendsOneByte(turn: readonly Path[]): boolean {
  const sent = turn.flatMap(({ items }) => items.filter((item) => item.kind === "send"));
  const bytes = new Set(sent.map(({ byte }) => byte));
  return bytes.size === 1 && !bytes.has(undefined);
}

/** In a loop whose turn may end in the middle of a command, the first byte may be its argument. */
function startsAfterUnknown(path: Path): Path {
  const first = path.items.findIndex(({ kind }) => kind === "send");
  const items = path.items.map((item, index) =>
    index === first && item.kind === "send" ? { ...item, afterUnknown: true } : item,
  );
  return { items, end: path.end };
}
