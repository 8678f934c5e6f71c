import { peekChain, startsChain } from "./chains.ts";
import { type DeclaratorContext, type DeclaratorEnd, declarator } from "./declarators.ts";
import { commaOrSemicolon, expression, noStops } from "./expressions.ts";
import { items } from "./items.ts";
import { list } from "./lists.ts";
import type { Scan } from "./scan.ts";
import { specifiers, type Where } from "./specifiers.ts";
import { presentChain } from "./type-names.ts";

/** Presents a declaration with its `;`, or a function with its body; gives the position behind it. */
export function declaration(scan: Scan, from: number, to: number, where: Where): number {
  const specified = specifiers(scan, from, to, where);
  const context: DeclaratorContext = { ...specified, where };
  const { templated } = scan;
  let at = specified.next;
  while (at < to) {
    if (scan.text(at) === ";") return at + 1;
    const start = at;
    const end = declarator(scan, at, to, context);
    at = end.next;
    declareName(scan, end, context, templated);
    scan.templated = false;
    if (scan.text(at) === ":") {
      if (!end.named) scan.phantom(at, "_");
      at = end.isFunction
        ? memberInitializers(scan, at + 1, to)
        : expression(scan, at + 1, to, bitWidthStops);
    }
    if (scan.text(at) === "{" && end.isFunction) return functionBody(scan, at, to, end);
    at = initializer(scan, at, to);
    if (scan.text(at) === ",") at += 1;
    else if (scan.text(at) !== ";" || at === start) break;
  }
  if (scan.text(at) === ";" && at < to) return at + 1;
  return recover(scan, at, to);
}

const bitWidthStops: ReadonlySet<string> = new Set([",", ";", "=", "{"]);

function declareName(scan: Scan, end: DeclaratorEnd, context: DeclaratorContext, templated: boolean): void {
  const { name, qualifier } = end;
  if (name === undefined || qualifier !== undefined || context.storage.includes("friend")) return;
  if (context.storage.includes("typedef")) scan.names.declare(name, "type");
  else if (name === scan.names.className && context.type.kind === "none") return;
  // One more function of that name does not make the template another thing.
  else if (end.isFunction && (templated || scan.names.lookup(name) === "function-template"))
    scan.names.declare(name, "function-template");
  else scan.names.declare(name, "value");
}

function functionBody(scan: Scan, open: number, to: number, end: DeclaratorEnd): number {
  const close = scan.close(open, to);
  // With a statement in it, which stands for no token, the block cannot be a braced initialiser.
  scan.phantom(Math.min(open + 1, close), ";");
  scan.nested(() => {
    if (end.qualifier !== undefined) scan.names.enter(end.qualifier);
    scan.names.enter();
    for (const name of end.parameterNames) scan.names.declare(name, "value");
    items(scan, open + 1, close, "block");
    scan.names.leave();
    if (end.qualifier !== undefined) scan.names.leave();
  });
  return Math.min(close + 1, to);
}

/** `= e`, `= {...}`, `{...}`; `= default`, `= delete` and `= 0` as they are. */
function initializer(scan: Scan, at: number, to: number): number {
  const text = scan.text(at);
  if (text === "{") return list(scan, at, to);
  if (text !== "=") return at;
  const next = scan.text(at + 1);
  if (next === "default" || next === "delete") return at + 2;
  return expression(scan, at + 1, to, commaOrSemicolon);
}

/** `a(1), B<2>{3}` of a constructor; gives the position of its body. */
function memberInitializers(scan: Scan, from: number, to: number): number {
  let at = from;
  while (at < to && startsChain(scan, at)) {
    const chain = peekChain(scan, at, to);
    presentChain(scan, chain);
    at = chain.next;
    const text = scan.text(at);
    if (text === "(") {
      const close = scan.close(at, to);
      expression(scan, at + 1, close, noStops);
      at = close + 1;
    } else if (text === "{") at = list(scan, at, to);
    if (scan.text(at) !== ",") break;
    at += 1;
  }
  return at;
}

/** Behind the next `;`, or behind a block that comes before it: what stands up to there was not understood. */
export function recover(scan: Scan, from: number, to: number): number {
  for (let at = from; at < to; at += 1) {
    const text = scan.text(at);
    if (text === ";") return at + 1;
    if (text === "{") return Math.min(scan.close(at, to) + 1, to);
    if (text === "(" || text === "[") at = Math.max(at, scan.close(at, to) - 1);
  }
  return to;
}
