import { recover } from "./declarations.ts";
import type { Scan } from "./scan.ts";

const asmQualifiers: ReadonlySet<string> = new Set([
  "volatile",
  "__volatile__",
  "__volatile",
  "goto",
  "inline",
  "__inline__",
]);

/** Presents `asm volatile ("..." : ...)` as `asm ("...")`; gives the position behind its semicolon. */
export function assembly(scan: Scan, from: number, to: number): number {
  scan.show(from, "asm");
  let at = from + 1;
  for (; asmQualifiers.has(scan.text(at)); at += 1) scan.hide(at);
  if (scan.text(at) !== "(") return recover(scan, at, to);
  const close = scan.close(at, to);
  for (at += 1; scan.isLiteral(at) && at < close; at += 1);
  scan.hideRange(at, close);
  return scan.text(close + 1) === ";" && close + 1 < to ? close + 2 : Math.min(close + 1, to);
}
