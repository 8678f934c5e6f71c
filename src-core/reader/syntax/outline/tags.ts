import { peekChain, startsChain } from "./chains.ts";
import { expression, onlyComma } from "./expressions.ts";
import { items } from "./items.ts";
import { declareMemberTypes } from "./member-types.ts";
import type { RecordedType } from "./presentation.ts";
import type { Scan } from "./scan.ts";
import { specifiers } from "./specifiers.ts";
import { presentChain } from "./type-names.ts";

/** A `struct`, `union`, `class` or `enum` with what follows up to the declarators. */
export interface Tag {
  readonly type: RecordedType;
  /** The first position that the grammar sees. */
  readonly first: number;
  readonly next: number;
}

/** Presents the record or enumeration whose keyword stands at `at` (C11 6.7.2.1 to 6.7.2.3, C++ [class], [dcl.enum]). */
export function tag(scan: Scan, at: number, to: number): Tag {
  const keyword = scan.text(at);
  let next = at + 1;
  const scoped = keyword === "enum" && (scan.text(next) === "class" || scan.text(next) === "struct");
  if (scoped) next += 1;
  let name: string | undefined;
  const nameAt = next;
  if (startsChain(scan, next)) {
    const chain = peekChain(scan, next, to);
    presentChain(scan, chain);
    name = scan.text(chain.last);
    next = chain.next;
  }
  if (scan.text(next) === "final") {
    scan.hide(next);
    next += 1;
  }
  const headEnd = next;
  if (keyword === "enum") next = enumBase(scan, next, to);
  const bases = keyword === "enum" ? [] : baseNames(scan, next, to);
  const body = bodyAfter(scan, next, to);
  if (body < 0) return reference(scan, { keyword, at, nameAt, headEnd, next, name });
  declareTag(scan, name);
  if (name !== undefined && bases.length > 0) scan.names.declareBases(name, bases);
  const close = scan.close(body, to);
  if (keyword === "enum") enumerators(scan, body + 1, close, name, scoped);
  else members(scan, body + 1, close, name);
  return { type: { kind: "body" }, first: at, next: close + 1 };
}

/** The position of `{`, behind base classes where there are some; -1 for none. */
function bodyAfter(scan: Scan, at: number, to: number): number {
  if (scan.text(at) === "{") return at;
  if (scan.text(at) !== ":") return -1;
  for (let each = at; each < to; each += 1) {
    const text = scan.text(each);
    if (text === "{") return each;
    if (text === ";" || text === "(" || text === "}") return -1;
  }
  return -1;
}

function baseNames(scan: Scan, at: number, to: number): readonly string[] {
  const body = bodyAfter(scan, at, to);
  const bases: string[] = [];
  for (let each = at + 1; each < body; each += 1) {
    if (!startsChain(scan, each)) continue;
    const chain = peekChain(scan, each, body);
    presentChain(scan, chain);
    bases.push(scan.text(chain.last));
    each = chain.next - 1;
  }
  return bases;
}

/** `: uint8_t` of an enumeration. */
function enumBase(scan: Scan, at: number, to: number): number {
  if (scan.text(at) !== ":" || scan.isNumber(at + 1)) return at;
  // The grammar wants a name before the type; this one stands for no token.
  if (!scan.isName(at - 1)) scan.phantom(at, "_");
  return specifiers(scan, at + 1, to, "type").next;
}

interface Reference {
  readonly keyword: string;
  readonly at: number;
  readonly nameAt: number;
  readonly headEnd: number;
  readonly next: number;
  readonly name: string | undefined;
}

/** `struct s` without a body: the grammar sees a type's name. */
function reference(scan: Scan, { keyword, at, nameAt, headEnd, next, name }: Reference): Tag {
  scan.hideRange(at, nameAt);
  scan.hideRange(headEnd, next);
  if (name === undefined) return { type: { kind: "none" }, first: at, next };
  if (headEnd === nameAt + 1) scan.show(nameAt, "size_t");
  else scan.phantom(nameAt, "_Nonnull");
  const isForward = scan.text(next) === ";";
  if (isForward || scan.names.lookup(name) === undefined) declareTag(scan, name);
  return { type: { kind: "reference", keyword }, first: nameAt, next };
}

/** In C a tag is a type only behind its keyword (C11 6.2.3); in C++ it is a name like others ([basic.scope.hiding]). */
function declareTag(scan: Scan, name: string | undefined): void {
  if (name === undefined || scan.language === "c") return;
  scan.names.declare(name, scan.templated ? "class-template" : "type");
  scan.templated = false;
}

function members(scan: Scan, from: number, to: number, name: string | undefined): void {
  scan.names.enter(scan.language === "c" ? undefined : name);
  if (scan.language === "c++") declareMemberTypes(scan, from, to);
  items(scan, from, to, "class");
  scan.names.leave();
}

function enumerators(scan: Scan, from: number, to: number, name: string | undefined, scoped: boolean): void {
  let at = from;
  while (at < to) {
    const start = at;
    if (scan.isName(at)) {
      if (!scoped) scan.names.declare(scan.text(at), "value");
      if (name !== undefined) scan.names.declareMember(name, scan.text(at), "value");
      at += 1;
    }
    if (scan.text(at) === "=") at = expression(scan, at + 1, to, onlyComma);
    while (at < to && scan.text(at) !== ",") at += 1;
    if (scan.text(at) === ",") at += 1;
    if (at === start) at += 1;
  }
}
