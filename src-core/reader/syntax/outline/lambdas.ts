import { expression, noStops } from "./expressions.ts";
import { items } from "./items.ts";
import { parameters } from "./parameters.ts";
import type { Scan } from "./scan.ts";
import { typeName } from "./type-names.ts";

/** Presents `[captures](parameters) -> T { body }` (C++ [expr.prim.lambda]) from its bracket on. */
export function lambda(scan: Scan, open: number, to: number): number {
  const close = scan.close(open, to);
  expression(scan, open + 1, close, noStops);
  let at = close + 1;
  let names: readonly string[] = [];
  if (scan.text(at) === "(") {
    const end = scan.close(at, to);
    names = parameters(scan, at + 1, end);
    at = end + 1;
  }
  while (scan.text(at) === "mutable" || scan.text(at) === "noexcept" || scan.text(at) === "constexpr") {
    scan.hide(at);
    at += 1;
  }
  if (scan.text(at) === "->") at = typeName(scan, at + 1, to);
  if (scan.text(at) !== "{") return at;
  const body = at;
  const end = scan.close(body, to);
  scan.nested(() => {
    scan.names.enter();
    for (const name of names) scan.names.declare(name, "value");
    items(scan, body + 1, end, "block");
    scan.names.leave();
  });
  return end + 1;
}
