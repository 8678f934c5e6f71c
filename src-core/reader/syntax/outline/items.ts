import { declaration } from "./declarations.ts";
import type { Scan } from "./scan.ts";
import { scopeItem } from "./scope-items.ts";
import type { Where } from "./specifiers.ts";
import { statement } from "./statements.ts";

/** Presents the declarations or statements from `from` to `to`. */
export function items(scan: Scan, from: number, to: number, where: Where): void {
  let at = from;
  while (at < to) at = Math.max(item(scan, at, to, where), at + 1);
}

/** One of them; gives the position behind it. */
export function item(scan: Scan, from: number, to: number, where: Where): number {
  if (where === "block") return statement(scan, from, to);
  const next = scopeItem(scan, from, to, where) ?? declaration(scan, from, to, where);
  scan.item(from, Math.min(next, to));
  return next;
}
