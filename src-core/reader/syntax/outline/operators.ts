import { startsChain } from "./chains.ts";
import { expression, group, noStops, onlyComma, type Step } from "./expressions.ts";
import type { Scan } from "./scan.ts";
import { specifiers } from "./specifiers.ts";
import { isTypeId, typeName } from "./type-names.ts";

/** `sizeof(T)`, `sizeof e`: what is no type is shown so that it cannot be one. */
export function sizeOf(scan: Scan, at: number, to: number): Step {
  if (scan.text(at + 1) === "..." && scan.text(at + 2) === "(") {
    // `sizeof...(Ts)`, as the size of a number.
    scan.hide(at + 1);
    scan.show(at + 3, "1");
    return { next: scan.close(at + 2, to) + 1, operand: false };
  }
  if (scan.text(at + 1) !== "(") return { next: at + 1, operand: true };
  const close = scan.close(at + 1, to);
  if (isTypeId(scan, at + 2, close)) typeName(scan, at + 2, close);
  else {
    group(scan, at + 1, close);
    // `group` does this where an operator follows; here every name may be taken for a type.
    if (startsChain(scan, at + 2)) scan.presentation.replacePhantom(scan.index(at + 2), "0 ,");
  }
  return { next: close + 1, operand: false };
}

/** `alignof(T)` in any spelling. */
export function alignOf(scan: Scan, at: number, to: number): number {
  scan.show(at, "alignof");
  if (scan.text(at + 1) !== "(") return at + 1;
  const close = scan.close(at + 1, to);
  typeName(scan, at + 2, close);
  return close + 1;
}

/** `offsetof(T, member)`; of a longer path (`a.b[2]`) the grammar sees the first name. */
export function offsetOf(scan: Scan, at: number, to: number): number {
  scan.show(at, "offsetof");
  if (scan.text(at + 1) !== "(") return at + 1;
  const close = scan.close(at + 1, to);
  const comma = typeName(scan, at + 2, close);
  scan.hideRange(comma + 2, close);
  return close + 1;
}

/** `__builtin_va_arg(list, T)`: the grammar sees a cast of a number in place of the type. */
export function nextArgument(scan: Scan, at: number, to: number): number {
  const close = scan.close(at + 1, to);
  const comma = expression(scan, at + 2, close, onlyComma);
  if (comma >= close) return close + 1;
  scan.phantom(comma + 1, "(");
  typeName(scan, comma + 1, close);
  scan.phantom(close, ") 1");
  return close + 1;
}

/** `static_cast<T>` up to its parenthesis. */
export function namedCast(scan: Scan, at: number, to: number): number {
  if (scan.text(at + 1) !== "<") return at + 1;
  const next = typeName(scan, at + 2, to);
  return scan.text(next) === ">" ? next + 1 : next;
}

/** `new T`, `new (place) T`; length and arguments are left to what follows a value. */
export function newExpression(scan: Scan, at: number, to: number): number {
  let next = at + 1;
  if (scan.text(next) === "(") {
    const close = scan.close(next, to);
    expression(scan, next + 1, close, noStops);
    next = close + 1;
  }
  return specifiers(scan, next, to, "type").next;
}
