import { recover } from "./declarations.ts";
import { expression, noStops } from "./expressions.ts";
import type { Scan } from "./scan.ts";

const asmQualifiers: ReadonlySet<string> = new Set([
  "volatile",
  "__volatile__",
  "__volatile",
  "goto",
  "inline",
  "__inline__",
]);

/**
 * Presents `asm volatile ("..." : "=r" (x) : "0" (y) : "cc")` with its operands, or where these are not understood as
 * `asm ("...")`; gives the position behind its semicolon.
 */
export function assembly(scan: Scan, from: number, to: number): number {
  scan.show(from, "asm");
  let at = from + 1;
  for (; asmQualifiers.has(scan.text(at)); at += 1) scan.hide(at);
  if (scan.text(at) !== "(") return recover(scan, at, to);
  const close = scan.close(at, to);
  for (at += 1; scan.isLiteral(at) && at < close; at += 1);
  const operands = operandsFrom(scan, at, close);
  scan.hideRange(operands?.end ?? at, close);
  for (const { open, shut } of operands?.values ?? []) expression(scan, open + 1, shut, noStops);
  for (const colons of operands?.pairs ?? []) scan.show(colons, ": :");
  return scan.text(close + 1) === ";" && close + 1 < to ? close + 2 : Math.min(close + 1, to);
}

interface Operands {
  /** Behind the inputs: what is clobbered has no values. */
  readonly end: number;
  /** Parentheses of the operands. */
  readonly values: readonly { readonly open: number; readonly shut: number }[];
  /** Where `::` stands for two colons. */
  readonly pairs: readonly number[];
}

/** Outputs and inputs: `[name] "constraint" (expression)`, separated by commas. */
function operandsFrom(scan: Scan, from: number, to: number): Operands | undefined {
  const values: { open: number; shut: number }[] = [];
  const pairs: number[] = [];
  let at = from;
  let colons = 0;
  while (at < to) {
    const text = scan.text(at);
    if (text === ":" || text === "::") {
      const more = text === "::" ? 2 : 1;
      if (colons + more > 2) break;
      if (more === 2) pairs.push(at);
      colons += more;
      at += 1;
      continue;
    }
    if (text === ",") {
      at += 1;
      continue;
    }
    if (text === "[") at = scan.close(at, to) + 1;
    if (!scan.isLiteral(at)) return undefined;
    while (scan.isLiteral(at)) at += 1;
    if (scan.text(at) !== "(") return undefined;
    const shut = scan.close(at, to);
    values.push({ open: at, shut });
    at = shut + 1;
  }
  return { end: at, values, pairs };
}
