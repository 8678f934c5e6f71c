import type { Chip } from "../../model/chips/chip.ts";
import type { At, FunctionSymbol, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { eachEvent } from "../walk/each-event.ts";
import { directEffects, functionEffects, reachedFrom } from "../walk/effects.ts";
import type { Walk } from "../walk/events.ts";
import type { Linkage } from "../walk/linkage.ts";
import { readsData } from "./polled-edges.ts";
import type { PortPins } from "./port-pins.ts";

/** Which code acts on the data line, and which reads it. */
export interface DataCode {
  /** Functions that read the data line themselves, and where. */
  readonly reads: ReadonlyMap<FunctionSymbol, readonly At[]>;
  /** Whether a statement of a function, or something that it calls, changes the data line. */
  changesData(statement: TypedStatement, within: FunctionSymbol): boolean;
  /** Whether a statement of a function, or something that it calls, reads it. */
  readsData(statement: TypedStatement, within: FunctionSymbol): boolean;
  /** Whether a function, or something that it calls, changes it. */
  isSending(symbol: FunctionSymbol): boolean;
}

export function dataCode(walk: Walk, pins: PortPins, chip: Chip | undefined): DataCode {
  const reads = new Map<FunctionSymbol, At[]>();
  const changes = new Set<At>();
  const changing = new Set<FunctionSymbol>();
  const { linkage } = walk;
  eachEvent(walk, (event, symbol) => {
    if (event.kind === "pin" && event.change.pin === pins.data?.pin) {
      changes.add(event.at);
      changing.add(linkage.definingSymbol(symbol));
    } else if (readsData(event, pins, chip)) {
      const known = reads.get(linkage.definingSymbol(symbol));
      if (known === undefined) reads.set(linkage.definingSymbol(symbol), [event.at]);
      else if (!known.includes(event.at)) known.push(event.at);
    }
  });
  const readAt = new Set([...reads.values()].flat());
  const reading = new Set(reads.keys());
  const isSending = reaching(changing, linkage);
  const isReading = reaching(reading, linkage);
  return {
    reads,
    isSending,
    changesData: (statement, within) =>
      mayLead(within, isSending, linkage) && holds(statement, changes, isSending),
    readsData: (statement, within) =>
      mayLead(within, isReading, linkage) && holds(statement, readAt, isReading),
  };
}

/** The text of a function has that of the functions that it hands to others. */
function mayLead(
  symbol: FunctionSymbol,
  leads: (symbol: FunctionSymbol) => boolean,
  linkage: Linkage,
): boolean {
  return leads(symbol) || [...functionEffects(symbol, linkage).callbacks.keys()].some(leads);
}

/** Tells whether a function leads to one of these, itself included. */
function reaching(some: ReadonlySet<FunctionSymbol>, linkage: Linkage): (symbol: FunctionSymbol) => boolean {
  const known = new Map<FunctionSymbol, boolean>();
  return (symbol) => {
    let answer = known.get(symbol);
    if (answer === undefined) {
      answer = [...reachedFrom([symbol], linkage)].some((each) => some.has(linkage.definingSymbol(each)));
      known.set(symbol, answer);
    }
    return answer;
  };
}

/** Whether one of these places lies in a statement, or something that it calls does the same. */
function holds(
  statement: TypedStatement,
  places: ReadonlySet<At>,
  does: (symbol: FunctionSymbol) => boolean,
): boolean {
  if ([...directEffects(statement).calls].some(does)) return true;
  let found = false;
  walkStatement(statement, {
    expression(expression) {
      if (places.has(expression.at)) found = true;
      return !found;
    },
  });
  return found;
}

/** Functions that call one of these themselves. */
export function callersOf(
  some: ReadonlySet<FunctionSymbol>,
  all: Iterable<FunctionSymbol>,
  linkage: Linkage,
): FunctionSymbol[] {
  return [...all].filter((symbol) =>
    [...functionEffects(symbol, linkage).calls].some((called) => some.has(linkage.definingSymbol(called))),
  );
}
