import { assembly } from "./assembly.ts";
import { peekChain, startsChain } from "./chains.ts";
import { recover } from "./declarations.ts";
import { expression, noStops, onlySemicolon } from "./expressions.ts";
import { item, items } from "./items.ts";
import type { Scan } from "./scan.ts";
import type { Where } from "./specifiers.ts";
import { instantiation, templateItem } from "./templates.ts";
import { typeName } from "./type-names.ts";
import { asmWords } from "./words.ts";

const accessWords: ReadonlySet<string> = new Set(["public", "private", "protected"]);

/** Presents what stands among declarations and is none with declarators; undefined where something else does. */
export function scopeItem(scan: Scan, from: number, to: number, where: Where): number | undefined {
  const text = scan.text(from);
  switch (text) {
    case ";":
      return from + 1;
    case "{":
    case "}":
      return text === "{" ? Math.min(scan.close(from, to) + 1, to) : from + 1;
    case "extern":
      return linkage(scan, from, to, where);
    case "_Static_assert":
    case "static_assert":
      return staticAssert(scan, from, to);
  }
  if (asmWords.has(text)) return assembly(scan, from, to);
  if (scan.language === "c") return undefined;
  if (accessWords.has(text) && scan.text(from + 1) === ":") return from + 2;
  switch (text) {
    case "template":
      return templateItem(scan, from, to, where);
    case "namespace":
      return namespace(scan, from + 1, to);
    case "inline":
      return scan.text(from + 1) === "namespace" ? namespace(scan, from + 2, to) : undefined;
    case "using":
      return using(scan, from, to);
  }
  return undefined;
}

/** `extern "C"` before a declaration or a block of them. */
function linkage(scan: Scan, from: number, to: number, where: Where): number | undefined {
  if (scan.text(from + 1) === "template") return instantiation(scan, from, to);
  if (!scan.isLiteral(from + 1)) return undefined;
  if (scan.text(from + 2) !== "{") return scan.nested(() => item(scan, from + 2, to, where));
  const close = scan.close(from + 2, to);
  scan.nested(() => items(scan, from + 3, close, where));
  return Math.min(close + 1, to);
}

function staticAssert(scan: Scan, from: number, to: number): number {
  scan.show(from, "static_assert");
  if (scan.text(from + 1) !== "(") return recover(scan, from + 1, to);
  const close = scan.close(from + 1, to);
  expression(scan, from + 2, close, noStops);
  return scan.text(close + 1) === ";" ? close + 2 : close + 1;
}

/** The names of a namespace count as those of the file: what is asked is only whether they are types. */
function namespace(scan: Scan, from: number, to: number): number {
  let at = from;
  while (at < to && (scan.isName(at) || scan.text(at) === "::")) at += 1;
  if (scan.text(at) === "=") return namespaceAlias(scan, at, to);
  if (scan.text(at) !== "{") return recover(scan, at, to);
  const close = scan.close(at, to);
  scan.nested(() => items(scan, at + 1, close, "file"));
  return Math.min(close + 1, to);
}

/** `namespace a = b::c;`: the grammar sees the last name. */
function namespaceAlias(scan: Scan, equals: number, to: number): number {
  const next = recover(scan, equals, to);
  scan.hideRange(equals + 1, next - 2);
  return next;
}

function using(scan: Scan, from: number, to: number): number {
  if (scan.isName(from + 1) && scan.text(from + 2) === "=") {
    const next = typeName(scan, from + 3, to);
    scan.names.declare(scan.text(from + 1), scan.templated ? "class-template" : "type");
    scan.templated = false;
    return scan.text(next) === ";" ? next + 1 : recover(scan, next, to);
  }
  if (startsChain(scan, from + 1)) {
    const chain = peekChain(scan, from + 1, to);
    if (chain.kind !== undefined && chain.qualifier !== undefined) {
      scan.names.declare(scan.text(chain.last), chain.kind);
    }
  }
  return Math.min(expression(scan, from + 1, to, onlySemicolon) + 1, to);
}
