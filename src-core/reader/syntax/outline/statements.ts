import { assembly } from "./assembly.ts";
import { condition, declares, forHead } from "./conditions.ts";
import { declaration } from "./declarations.ts";
import { expression, group, noStops, onlySemicolon } from "./expressions.ts";
import { items } from "./items.ts";
import type { Scan } from "./scan.ts";
import { scopeItem } from "./scope-items.ts";
import { isDeclaration, isUncertain } from "./statement-kind.ts";
import { asmWords } from "./words.ts";

/** Presents one statement (C11 6.8, C++ [stmt]) with its labels; gives the position behind it. */
export function statement(scan: Scan, from: number, to: number): number {
  const start = labels(scan, from, to);
  const next = Math.min(
    scan.nested(() => unmarked(scan, start, to)),
    to,
  );
  scan.item(from, next);
  if (start > from) scan.item(start, next);
  return next;
}

/** Behind `case 1:`, `default:` and `name:`. */
function labels(scan: Scan, from: number, to: number): number {
  let at = from;
  while (at < to) {
    const text = scan.text(at);
    if (text === "case") {
      const colon = caseColon(scan, at + 1, to);
      caseValue(scan, at + 1, colon);
      at = colon + 1;
    } else if (text === "default" && scan.text(at + 1) === ":") at += 2;
    else if (scan.isName(at) && scan.text(at + 1) === ":") {
      at += 2;
      // A label before `}` labels nothing, which the grammar does not know.
      if (at >= to) scan.phantom(to, ";");
    } else break;
  }
  return Math.min(at, to);
}

/** The colon that ends the label, past those of `? :`. */
function caseColon(scan: Scan, from: number, to: number): number {
  let questions = 0;
  for (let at = from; at < to; at += 1) {
    const text = scan.text(at);
    if (text === "(" || text === "[" || text === "{") at = scan.close(at, to);
    else if (text === "?") questions += 1;
    else if (text === ";") return at;
    else if (text === ":") {
      if (questions === 0) return at;
      questions -= 1;
    }
  }
  return to;
}

/** GNU `case 1 ... 3` is shown as `1 || 3`: nothing in a constant expression binds less. */
function caseValue(scan: Scan, from: number, colon: number): void {
  for (let at = from; at < colon; at += 1) {
    if (scan.text(at) === "...") scan.show(at, "||");
  }
  expression(scan, from, colon, noStops);
}

function unmarked(scan: Scan, from: number, to: number): number {
  if (from >= to) return to;
  const text = scan.text(from);
  switch (text) {
    case ";":
    case "}":
      return from + 1;
    case "{":
      return block(scan, from, to);
    case "if":
      return ifStatement(scan, from, to);
    case "while":
    case "switch":
    case "for":
      return loop(scan, from, to, text);
    case "do":
      return doStatement(scan, from, to);
    case "else":
    case "case":
    case "default":
      return from + 1;
    case "return":
    case "throw":
      return ended(scan, expression(scan, from + 1, to, onlySemicolon), to);
    case "break":
    case "continue":
      return ended(scan, from + 1, to);
    case "goto":
      return ended(scan, expression(scan, from + 1, to, onlySemicolon), to);
    case "try":
      return tryStatement(scan, from, to);
  }
  if (asmWords.has(text)) return assembly(scan, from, to);
  return simple(scan, from, to);
}

function simple(scan: Scan, from: number, to: number): number {
  const text = scan.text(from);
  const isScopeItem =
    text === "using" ||
    text === "namespace" ||
    text === "static_assert" ||
    text === "_Static_assert" ||
    text === "extern" ||
    text === "template";
  const other = isScopeItem ? scopeItem(scan, from, to, "block") : undefined;
  if (other !== undefined) return other;
  if (isDeclaration(scan, from, to)) return declaration(scan, from, to, "block");
  if (isUncertain(scan, from, to)) scan.phantom(from, "0 ,");
  return ended(scan, expression(scan, from, to, onlySemicolon), to);
}

/** Behind the semicolon, where there is one. */
function ended(scan: Scan, at: number, to: number): number {
  return at < to && scan.text(at) === ";" ? at + 1 : at;
}

function block(scan: Scan, open: number, to: number): number {
  const close = scan.close(open, to);
  scan.names.enter();
  items(scan, open + 1, close, "block");
  scan.names.leave();
  return close + 1;
}

function ifStatement(scan: Scan, from: number, to: number): number {
  let at = from;
  let opened = 0;
  // A loop over the arms: a long chain of `else if` is not nested to its reader either.
  for (;;) {
    at += scan.text(at + 1) === "constexpr" ? 2 : 1;
    if (scan.text(at) !== "(") break;
    const close = scan.close(at, to);
    if (declares(scan, at + 1, close)) {
      scan.names.enter();
      opened += 1;
    }
    condition(scan, at + 1, close);
    at = close + 1;
    if (at < to) at = statement(scan, at, to);
    if (scan.text(at) !== "else" || at >= to) break;
    at += 1;
    if (scan.text(at) === "if" && at < to) continue;
    if (at < to) at = statement(scan, at, to);
    break;
  }
  for (; opened > 0; opened -= 1) scan.names.leave();
  return at;
}

function loop(scan: Scan, from: number, to: number, keyword: "while" | "switch" | "for"): number {
  if (scan.text(from + 1) !== "(") return from + 1;
  const close = scan.close(from + 1, to);
  scan.names.enter();
  if (keyword === "for") forHead(scan, from + 2, close);
  else condition(scan, from + 2, close);
  const next = close + 1 < to ? statement(scan, close + 1, to) : to;
  scan.names.leave();
  return next;
}

function doStatement(scan: Scan, from: number, to: number): number {
  let at = from + 1 < to ? statement(scan, from + 1, to) : to;
  if (scan.text(at) !== "while" || scan.text(at + 1) !== "(") return at;
  const close = scan.close(at + 1, to);
  group(scan, at + 1, close);
  at = close + 1;
  return ended(scan, at, to);
}

function tryStatement(scan: Scan, from: number, to: number): number {
  let at = from + 1;
  if (scan.text(at) === "{") at = block(scan, at, to);
  while (scan.text(at) === "catch" && scan.text(at + 1) === "(") {
    at = scan.close(at + 1, to) + 1;
    if (scan.text(at) === "{") at = block(scan, at, to);
  }
  return Math.max(at, from + 1);
}
