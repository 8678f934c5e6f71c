import type { Angle, Chain } from "./chains.ts";
import { meansType, peekChain, startsChain } from "./chains.ts";
import { declarator } from "./declarators.ts";
import { expression } from "./expressions.ts";
import type { Scan } from "./scan.ts";
import { specifiers } from "./specifiers.ts";
import { isTypeWord, qualifiers, recordKeywords, typeofWords } from "./words.ts";

/** Presents a type as in a cast: specifiers and what stands around no name. Gives the position behind it. */
export function typeName(scan: Scan, from: number, to: number): number {
  const specified = specifiers(scan, from, to, "type");
  return declarator(scan, specified.next, to, { ...specified, where: "type" }).next;
}

/** Presents the template arguments of a name. */
export function presentChain(scan: Scan, chain: Chain): void {
  for (const angle of chain.angles) templateArguments(scan, angle);
}

function templateArguments(scan: Scan, angle: Angle): void {
  const isShared = scan.text(angle.close) === ">>";
  if (isShared) scan.show(angle.close, "> >");
  // The first half of `>>` closes a template among the arguments.
  const to = isShared && !angle.half ? angle.close + 1 : angle.close;
  scan.nested(() => {
    let at = angle.open + 1;
    while (at < angle.close) {
      const start = at;
      if (startsType(scan, at, to)) at = typeName(scan, at, to);
      else {
        const behind = scan.text(at + 1);
        // Shown as a number, a value cannot be taken for a type.
        if (scan.isName(at) && (at + 1 === angle.close || behind === ",")) scan.show(at, "1");
        at = expression(scan, at, to, argumentEnds);
      }
      if (scan.text(at) === ",") at += 1;
      if (at === start) at += 1;
    }
  });
}

const argumentEnds: ReadonlySet<string> = new Set([",", ">>"]);

/** Whether a type, not a value, starts at `from` as a template argument. */
function startsType(scan: Scan, from: number, to: number): boolean {
  const text = scan.text(from);
  if (isTypeWord(text, scan.language)) return true;
  if (isTypeStart(text)) return true;
  if (!startsChain(scan, from)) return false;
  const chain = peekChain(scan, from, to);
  const behind = chain.next < to ? scan.text(chain.next) : "";
  if (!meansType(chain.kind) || behind === "{" || behind === "::") return false;
  if (behind !== "(") return true;
  // `R(A)` is the type of a function, `T(3)` a value.
  const close = scan.close(chain.next, to);
  return chain.next + 1 === close || isTypeId(scan, chain.next + 1, close);
}

function isTypeStart(text: string): boolean {
  return qualifiers.has(text) || recordKeywords.has(text) || text === "typename" || typeofWords.has(text);
}

/** Operators and brackets that may follow a cast and a value alike. */
export const mayFollowBoth: ReadonlySet<string> = new Set([
  "(",
  "-",
  "+",
  "*",
  "&",
  "&&",
  "++",
  "--",
  "[",
  "{",
]);

/**
 * Whether the tokens from `from` to the parenthesis at `to` are a type (C11 6.5.4, 6.5.3.4; C++ [dcl.ambig.res]).
 * An unknown name is one where nothing else makes sense.
 */
export function isTypeId(scan: Scan, from: number, to: number): boolean {
  const text = scan.text(from);
  if (from >= to) return false;
  if (isTypeStart(text)) return true;
  if (isTypeWord(text, scan.language)) {
    const behind = scan.text(from + 1);
    return from + 1 === to || (behind !== "(" && behind !== "{") || isAbstractFunction(scan, from + 1, to);
  }
  if (!startsChain(scan, from)) return false;
  const chain = peekChain(scan, from, to);
  if (chain.kind === "value" || chain.kind === "function-template") return false;
  if (chain.next < to && !isAbstract(scan, chain.next, to)) return false;
  if (meansType(chain.kind)) return true;
  // Unknown: `(x)` before an operand can only be a cast, `(x *)` only a type.
  if (chain.next < to) return scan.text(chain.next) === "*";
  if (scan.text(from).endsWith("_t")) return true;
  if (chain.angles.length > 0) return true;
  const behind = scan.text(to + 1);
  if (behind === "{") return true;
  return startsOperand(scan, to + 1) && !mayFollowBoth.has(behind);
}

/** Something that can only be the operand of a cast, not go on after a value. */
function startsOperand(scan: Scan, at: number): boolean {
  const text = scan.text(at);
  return scan.isLiteral(at) || scan.isName(at) || text === "~" || text === "!" || text === "sizeof";
}

/** Whether only what stands around no name follows: `*`, `&`, `[3]`, `(*)(int)`. */
function isAbstract(scan: Scan, from: number, to: number): boolean {
  for (let at = from; at < to; at += 1) {
    const text = scan.text(at);
    if (text === "[") at = scan.close(at, to);
    else if (text === "(") return isAbstractFunction(scan, at, to);
    else if (text !== "*" && text !== "&" && text !== "&&" && !qualifiers.has(text)) return false;
  }
  return true;
}

/** `(*)(int)`, `(*[4])(void)`. */
function isAbstractFunction(scan: Scan, open: number, to: number): boolean {
  return scan.text(open + 1) === "*" && scan.text(scan.close(open, to) + 1) === "(";
}
