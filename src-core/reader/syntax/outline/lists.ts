import { expression, noStops, onlyComma } from "./expressions.ts";
import type { Scan } from "./scan.ts";

/** Presents a braced list, designators included (C11 6.7.9; gcc manual, "Designated Inits"). */
export function list(scan: Scan, open: number, to: number): number {
  const close = scan.close(open, to);
  scan.nested(() => {
    let at = open + 1;
    while (at < close) {
      const start = at;
      at = designators(scan, at, close);
      at = expression(scan, at, close, onlyComma);
      while (at < close && scan.text(at) !== ",") at += 1;
      if (scan.text(at) === ",") at += 1;
      if (at === start) at += 1;
    }
  });
  return close + 1;
}

/** The position behind `.x[2] =` or the old `x:`. */
function designators(scan: Scan, from: number, to: number): number {
  if (scan.isName(from) && scan.text(from + 1) === ":") return from + 2;
  let at = from;
  for (;;) {
    if (scan.text(at) === "." && scan.isName(at + 1)) at += 2;
    else if (scan.text(at) === "[" && isDesignator(scan, at, to)) {
      const close = scan.close(at, to);
      expression(scan, at + 1, close, noStops);
      at = close + 1;
    } else break;
  }
  return at > from && scan.text(at) === "=" ? at + 1 : at;
}

/** `[i] =` and not a lambda. */
function isDesignator(scan: Scan, open: number, to: number): boolean {
  const behind = scan.text(scan.close(open, to) + 1);
  return behind === "=" || behind === "[" || behind === ".";
}
