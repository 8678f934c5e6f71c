import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Entry, EntryWalk, Walk } from "../walk/events.ts";

/** A function that an interrupt runs, and what it does. */
export interface Handler extends EntryWalk {
  readonly function: FunctionSymbol;
}

/** Calls that make a function an interrupt's handler: of the sketch core, of libraries, of vendor kits. */
const INSTALLS = /attach|irq|isr|interrupt|timer|onreceive|onrequest/i;

/** Entries of a vector table that are functions of fixed names, as ARM chips have. */
const TABLE_ENTRY = /_(IRQ)?Handler$/;

export function handlersOf(walk: Walk): readonly Handler[] {
  return walk.entries
    .filter(({ entry }) => isHandler(entry))
    .map((each) => ({ ...each, function: each.entry.function }));
}

export function isHandler(entry: Entry): boolean {
  switch (entry.kind) {
    case "program":
      return false;
    case "interrupt":
      return (
        entry.vector !== undefined || entry.attachedBy === undefined || INSTALLS.test(entry.attachedBy.name)
      );
    case "alone":
      return TABLE_ENTRY.test(entry.function.name) && entry.function.type.parameters.length === 0;
  }
}
