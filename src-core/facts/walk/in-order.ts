import type { Event } from "./events.ts";

type Lists = WeakMap<readonly Event[], readonly Event[]>;

type Kind = Event["kind"];

/** A bit for each kind of event. */
const kindBits: Readonly<Record<Kind, number>> = {
  call: 1 << 0,
  branch: 1 << 1,
  loop: 1 << 2,
  "register-write": 1 << 3,
  "register-read": 1 << 4,
  "outside-call": 1 << 5,
  "time-test": 1 << 6,
  pin: 1 << 7,
  leave: 1 << 8,
  assembly: 1 << 9,
  "not-followed": 1 << 10,
  label: 1 << 11,
};

let flattened: Lists = new WeakMap();
let withoutRepeats: Lists = new WeakMap();
let kinds = new WeakMap<readonly Event[], number>();

/**
 * Begins new tables, as a walk does and whoever lets go of a walk. A table that outlives its walk would keep it: a
 * minor collection takes what a weak map holds as being in use, so that all walks since the last major one would be
 * copied and stay.
 */
export function forgetOrders(): void {
  flattened = new WeakMap();
  withoutRepeats = new WeakMap();
  kinds = new WeakMap();
}

/**
 * All events in the order in which the text does them, those inside calls, branches and loops after their own.
 * Kept with the list they come from.
 */
export function inOrder(events: readonly Event[]): readonly Event[] {
  let flat = flattened.get(events);
  if (flat === undefined) {
    const into: Event[] = [];
    flatten(events, into);
    flat = into;
    flattened.set(events, flat);
  }
  return flat;
}

/**
 * The same, without what a call did that an earlier one did as well. Calls are repeated so often that this is a small part
 * of all events: enough for whoever asks whether something is ever done, and what is done first.
 */
export function eachOnce(events: readonly Event[]): readonly Event[] {
  let flat = withoutRepeats.get(events);
  if (flat === undefined) {
    const into: Event[] = [];
    const seen = new Set<readonly Event[]>();
    const goThrough = (list: readonly Event[]): void => {
      if (list.length === 0 || seen.has(list)) return;
      seen.add(list);
      for (const event of list) {
        into.push(event);
        eachListIn(event, goThrough);
      }
    };
    goThrough(events);
    flat = into;
    withoutRepeats.set(events, flat);
  }
  return flat;
}

/** The kinds of all events, those inside others included, as bits. */
function kindsIn(events: readonly Event[]): number {
  if (events.length === 0) return 0;
  let found = kinds.get(events);
  if (found === undefined) {
    let bits = 0;
    const goInto = (list: readonly Event[]): void => {
      bits |= kindsIn(list);
    };
    for (const event of events) {
      bits |= kindBits[event.kind];
      eachListIn(event, goInto);
    }
    found = bits;
    kinds.set(events, found);
  }
  return found;
}

/** Tells of lists whether one of their events, or of those inside, is of one of these kinds. */
export function holdingKind(...sought: readonly Kind[]): (events: readonly Event[]) => boolean {
  const bits = sought.reduce((sum, kind) => sum | kindBits[kind], 0);
  return (events) => (kindsIn(events) & bits) !== 0;
}

/** The same for those events among them that are of that sort; each list is looked through once. */
export function holding(
  sought: readonly Kind[],
  isSought: (event: Event) => boolean,
): (events: readonly Event[]) => boolean {
  const holdsKind = holdingKind(...sought);
  const known = new Map<readonly Event[], boolean>();
  const holds = (events: readonly Event[]): boolean => {
    if (!holdsKind(events)) return false;
    let answer = known.get(events);
    if (answer === undefined) {
      answer = events.some((event) => isSought(event) || isInside(event, holds));
      known.set(events, answer);
    }
    return answer;
  };
  return holds;
}

/** Whether all events, those inside others included, are of that sort; stops at the first that is not. */
export function everyEvent(events: readonly Event[], holds: (event: Event) => boolean): boolean {
  const isBroken = (list: readonly Event[]): boolean => !everyEvent(list, holds);
  return events.every((event) => holds(event) && !isInside(event, isBroken));
}

function flatten(events: readonly Event[], into: Event[]): void {
  const goOn = (list: readonly Event[]): void => flatten(list, into);
  for (const event of events) {
    into.push(event);
    eachListIn(event, goOn);
  }
}

/** Calls `met` for each list of events that an event holds. */
export function eachListIn(event: Event, met: (events: readonly Event[]) => void): void {
  if (event.kind === "call") met(event.events);
  else if (event.kind === "branch") for (const side of event.sides) met(side);
  else if (event.kind === "loop") for (const pass of event.passes) met(pass);
}

function isInside(event: Event, holds: (events: readonly Event[]) => boolean): boolean {
  if (event.kind === "call") return holds(event.events);
  if (event.kind === "branch") return event.sides.some(holds);
  return event.kind === "loop" && event.passes.some(holds);
}
