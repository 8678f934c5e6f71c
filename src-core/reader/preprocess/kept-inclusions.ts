import type { WorkToken } from "../lexer/lexed-file.ts";
import type { FoundFile } from "./include-lookup.ts";
import type { MacroTable, TableRecord } from "./macro-table.ts";

/** One inclusion of a built-in header, kept to be repeated where it would come out the same. */
export interface KeptInclusion {
  readonly text: string;
  readonly table: TableRecord;
  readonly tokens: readonly WorkToken[];
  readonly lookups: LookupRecord;
}

/** What an inclusion asked of the files around it. */
export interface LookupRecord {
  /** Files that it wanted to read, and whether `#pragma once` already kept them out. */
  readonly wasRead: Map<string, boolean>;
  /** Files with `#pragma once` that it read. */
  readonly nowRead: Set<string>;
  /** Built-in headers that it included, by name, with their texts. */
  readonly headers: Map<string, string | undefined>;
  /** Paths of the workspace where it looked and found nothing. */
  readonly absent: Set<string>;
  /** Something in it has to be done each time anew: a problem to be said, a file of the workspace read. */
  mustRepeat: boolean;
}

export function newLookupRecord(): LookupRecord {
  return { wasRead: new Map(), nowRead: new Set(), headers: new Map(), absent: new Set(), mustRepeat: false };
}

/** What a kept inclusion is held against. */
export interface InclusionState {
  readonly table: MacroTable;
  readonly once: ReadonlySet<string>;
  readText(path: string): string | undefined;
  standIn(name: string): string | undefined;
}

const KEPT_PER_HEADER = 8;

/** The kept inclusion of a header that would come out the same now. */
export function findKept(
  kept: readonly KeptInclusion[] | undefined,
  found: FoundFile,
  state: InclusionState,
): KeptInclusion | undefined {
  return kept?.find((each) => each.text === found.text && isSame(each, state));
}

function isSame({ table, lookups }: KeptInclusion, state: InclusionState): boolean {
  for (const [file, wasRead] of lookups.wasRead) if (state.once.has(file) !== wasRead) return false;
  for (const [name, text] of lookups.headers) if (state.standIn(name) !== text) return false;
  for (const path of lookups.absent) if (state.readText(path) !== undefined) return false;
  return state.table.wouldRepeat(table);
}

export function addKept(
  kept: readonly KeptInclusion[] | undefined,
  made: KeptInclusion,
): readonly KeptInclusion[] {
  return [made, ...(kept ?? [])].slice(0, KEPT_PER_HEADER);
}
