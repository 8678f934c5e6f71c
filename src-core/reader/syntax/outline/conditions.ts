import { declaration } from "./declarations.ts";
import { declarator } from "./declarators.ts";
import { expression, noStops, onlySemicolon } from "./expressions.ts";
import type { Scan } from "./scan.ts";
import { specifiers } from "./specifiers.ts";
import { isDeclaration, isUncertain } from "./statement-kind.ts";

/** Presents what stands in the parentheses of `if`, `while` and `switch`; C++ allows `init; condition`. */
export function condition(scan: Scan, from: number, to: number): void {
  let at = from;
  if (semicolon(scan, from, to) < to) at = initStatement(scan, from, to);
  if (isDeclaration(scan, at, to)) declaration(scan, at, to, "block");
  else expression(scan, at, to, noStops);
}

/** Whether the condition has names of its own, which all arms of an `if` see (C++ [stmt.if]). */
export function declares(scan: Scan, from: number, to: number): boolean {
  return scan.language === "c++" && (semicolon(scan, from, to) < to || isDeclaration(scan, from, to));
}

/** Presents the head of a `for`, over a range or not (C++ [stmt.ranged]). */
export function forHead(scan: Scan, from: number, to: number): void {
  const first = semicolon(scan, from, to);
  if (first >= to && scan.language === "c++") {
    const specified = specifiers(scan, from, to, "block");
    const end = declarator(scan, specified.next, to, { ...specified, where: "parameter" });
    if (end.name !== undefined) scan.names.declare(end.name, "value");
    expression(scan, end.next + 1, to, noStops);
    return;
  }
  let at = initStatement(scan, from, to);
  if (scan.language === "c++" && isDeclaration(scan, at, to)) at = declaredCondition(scan, at, to);
  at = expression(scan, at, to, onlySemicolon);
  if (at < to) expression(scan, at + 1, to, noStops);
}

/** `for (...; int c = next(); ...)`: the grammar, which knows of no declaration there, sees `c = next()`. */
function declaredCondition(scan: Scan, from: number, to: number): number {
  const { next } = specifiers(scan, from, to, "block");
  const record = [...scan.presentation.specifiers.values()].at(-1);
  let at = next;
  while (at < to && (scan.text(at) === "*" || scan.text(at) === "&")) at += 1;
  if (record === undefined || !scan.isName(at) || scan.text(at + 1) !== "=") return from;
  scan.presentation.specifiers.delete(record.typeFirst);
  scan.presentation.replacePhantom(record.typeFirst, "");
  scan.hideRange(from, at);
  scan.presentation.declaredConditions.set(scan.index(at), record);
  scan.names.declare(scan.text(at), "value");
  return at;
}

function initStatement(scan: Scan, from: number, to: number): number {
  if (isDeclaration(scan, from, to)) return declaration(scan, from, to, "block");
  if (isUncertain(scan, from, to)) scan.phantom(from, "0 ,");
  return Math.min(expression(scan, from, to, onlySemicolon) + 1, to);
}

/** The first `;` outside brackets, or `to`. */
function semicolon(scan: Scan, from: number, to: number): number {
  for (let at = from; at < to; at += 1) {
    const text = scan.text(at);
    if (text === ";") return at;
    if (text === "(" || text === "[" || text === "{") at = scan.close(at, to);
  }
  return to;
}
