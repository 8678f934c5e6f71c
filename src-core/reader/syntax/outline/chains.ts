import type { NameKind } from "../names/names.ts";
import type { Scan } from "./scan.ts";
import { isTypeWord, qualifiers, recordKeywords } from "./words.ts";

/** `<` and the `>` that closes it. */
export interface Angle {
  readonly open: number;
  readonly close: number;
  /** The closer is the first half of a `>>`, whose second half closes the template around this one. */
  readonly half: boolean;
}

/** A name as written: `a`, `::a`, `A::b<int>::c`. */
export interface Chain {
  readonly from: number;
  readonly next: number;
  /** Position of the last identifier. */
  readonly last: number;
  /** One identifier without `::` or template arguments. */
  readonly simple: boolean;
  readonly kind: NameKind | undefined;
  /** The identifier before the last. */
  readonly qualifier: string | undefined;
  readonly angles: readonly Angle[];
}

/** A name that means a type, templates of classes included. */
export function meansType(kind: NameKind | undefined): boolean {
  return kind === "type" || kind === "class-template";
}

export function startsChain(scan: Scan, at: number): boolean {
  return scan.isName(at) || (scan.text(at) === "::" && scan.isName(at + 1));
}

/** Looks at the name that starts at `from` (see `startsChain`); tells the presentation nothing. */
export function peekChain(scan: Scan, from: number, to: number): Chain {
  let at = scan.text(from) === "::" ? from + 1 : from;
  let qualifier: string | undefined;
  const angles: Angle[] = [];
  for (;;) {
    const name = scan.text(at);
    const kind = qualifier === undefined ? scan.names.lookup(name) : scan.names.qualified(qualifier, name);
    let next = at + 1;
    const angle = next < to && scan.text(next) === "<" ? templateAngle(scan, next, to, kind) : undefined;
    if (angle !== undefined) {
      angles.push(angle);
      next = angle.half ? angle.close : angle.close + 1;
    }
    if (angle?.half !== true && next < to && scan.text(next) === "::" && scan.isName(next + 1)) {
      qualifier = name;
      at = next + 1;
      continue;
    }
    return { from, next, last: at, simple: next === from + 1, kind, qualifier, angles };
  }
}

/** The template arguments that `<` at `open` starts; undefined where it is a comparison. */
function templateAngle(scan: Scan, open: number, to: number, kind: NameKind | undefined): Angle | undefined {
  if (scan.language === "c" || kind === "value") return undefined;
  const angle = matchAngle(scan, open, to);
  if (angle === undefined || kind !== undefined) return angle;
  const first = scan.text(open + 1);
  const startsWithType =
    isTypeWord(first, scan.language) ||
    qualifiers.has(first) ||
    recordKeywords.has(first) ||
    (scan.isName(open + 1) && meansType(scan.names.lookup(first)));
  const behind = scan.text(angle.close + 1);
  // `a < b > c` compares a truth value with `c`, which nobody writes.
  if (startsWithType || behind === "::") return angle;
  return scan.isName(angle.close + 1) && isPlain(scan, angle) ? angle : undefined;
}

/** Whether nothing but names, numbers and what types are made of stands between the brackets. */
function isPlain(scan: Scan, angle: Angle): boolean {
  for (let at = angle.open + 1; at < angle.close; at += 1) {
    if (scan.isIdentifier(at) || scan.isNumber(at)) continue;
    if (!plain.has(scan.text(at))) return false;
  }
  return true;
}

const plain: ReadonlySet<string> = new Set([",", "::", "*", "&", "<", ">", ">>"]);

/** Tokens looked through for the end of template arguments: what is longer is none. */
const longestArguments = 1000;

/** Finds the `>` that closes the `<` at `open` (C++ [temp.names]: `>>` closes two). */
export function matchAngle(scan: Scan, open: number, to: number): Angle | undefined {
  let depth = 0;
  const end = Math.min(to, open + longestArguments);
  for (let at = open; at < end; at += 1) {
    switch (scan.text(at)) {
      case "<":
        depth += 1;
        break;
      case ">":
        depth -= 1;
        if (depth === 0) return { open, close: at, half: false };
        break;
      case ">>":
        if (depth === 1) return { open, close: at, half: true };
        depth -= 2;
        if (depth === 0) return { open, close: at, half: false };
        break;
      case "(":
      case "[":
      case "{":
        at = scan.close(at, to);
        break;
      case ";":
      case "}":
      case ")":
      case "||":
      case "&&":
        return undefined;
    }
  }
  return undefined;
}
