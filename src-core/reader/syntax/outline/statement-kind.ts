import { meansType, peekChain, startsChain } from "./chains.ts";
import type { Scan } from "./scan.ts";
import { isTypeWord, namedCasts, qualifiers, recordKeywords, storageWord, typeofWords } from "./words.ts";

/**
 * Whether the statement, condition or loop head at `from` is a declaration. What can be one is one
 * (C++ [stmt.ambig]); an unknown name is a type where a declaration needs it to be.
 */
export function isDeclaration(scan: Scan, from: number, to: number): boolean {
  const text = scan.text(from);
  const { language } = scan;
  if (qualifiers.has(text) || recordKeywords.has(text)) return true;
  if (storageWord(text, language) !== undefined || text === "auto") return true;
  if (typeofWords.has(text) || text === "typename") return true;
  if (isTypeWord(text, language)) return !startsExpression(scan, from + 1, to);
  if (!startsChain(scan, from)) return false;
  const chain = peekChain(scan, from, to);
  const next = chain.next < to ? scan.text(chain.next) : "";
  if (chain.kind === "value" || chain.kind === "function-template") {
    return scan.isName(chain.next) && chain.next < to && chain.simple;
  }
  if (meansType(chain.kind)) {
    if (scan.isName(chain.next) || next === "*" || next === "&" || next === "&&") return true;
    if (qualifiers.has(next) || next === "[") return true;
    return next === "(" && !startsExpression(scan, chain.next, to);
  }
  if (chain.next >= to) return false;
  if (scan.isName(chain.next)) return true;
  if (next === "*" || next === "&") return declaresBehind(scan, chain.next + 1, to);
  return qualifiers.has(next);
}

/** Behind `unknown *`: a name and what follows a declared one. */
function declaresBehind(scan: Scan, from: number, to: number): boolean {
  let at = from;
  while (at < to && (scan.text(at) === "*" || qualifiers.has(scan.text(at)))) at += 1;
  if (!scan.isName(at)) return false;
  const next = scan.text(at + 1);
  // `unknown * f(x);` would multiply in vain.
  if (next === "(" && scan.language === "c++") return scan.text(scan.close(at + 1, to) + 1) === ";";
  return next === "=" || next === ";" || next === "," || next === "[" || next === ":";
}

/** Behind a type: `(3)`, `(x).y`, `{...}` make a value; `(x);`, `(*f)(int)` declare (C++ [stmt.ambig]). */
function startsExpression(scan: Scan, at: number, to: number): boolean {
  const text = scan.text(at);
  if (text === "{" || text === ".") return true;
  if (text !== "(") return false;
  if (scan.language === "c") return false;
  const close = scan.close(at, to);
  if (!isDeclarator(scan, at + 1, close)) return true;
  const behind = scan.text(close + 1);
  if (behind === ",") return !isDeclarator(scan, close + 2, declaratorEnd(scan, close + 2, to));
  return behind !== ";" && behind !== "=" && behind !== "[" && behind !== "(" && behind !== ":";
}

/** `x`, `*x`, `x[3]`, `*f(int)`, `(*x)`: what can be declared. */
function isDeclarator(scan: Scan, from: number, to: number): boolean {
  let at = from;
  while (at < to && (prefixes.has(scan.text(at)) || qualifiers.has(scan.text(at)))) at += 1;
  if (scan.text(at) === "(" && at < to) {
    const close = scan.close(at, to);
    const inner = at + 1;
    if (!scan.nested(() => isDeclarator(scan, inner, close))) return false;
    at = close + 1;
  } else if (scan.isName(at) && at < to) at += 1;
  else return false;
  while (at < to && (scan.text(at) === "[" || scan.text(at) === "(")) at = scan.close(at, to) + 1;
  return at >= to;
}

const prefixes: ReadonlySet<string> = new Set(["*", "&", "&&"]);

function declaratorEnd(scan: Scan, from: number, to: number): number {
  for (let at = from; at < to; at += 1) {
    const text = scan.text(at);
    if (text === "," || text === ";" || text === "=") return at;
    if (text === "(" || text === "[" || text === "{") at = scan.close(at, to);
  }
  return to;
}

/** Whether the grammar might take the expression statement at `from` for a declaration. */
export function isUncertain(scan: Scan, from: number, to: number): boolean {
  if (isTypeWord(scan.text(from), scan.language) || namedCasts.has(scan.text(from))) return true;
  if (!startsChain(scan, from)) return false;
  const chain = peekChain(scan, from, to);
  if (!chain.simple) return true;
  switch (scan.text(chain.next)) {
    case "*":
    case "&":
    case "&&":
    case "(":
    case "[":
    case "<":
    case "{":
      return true;
    default:
      return false;
  }
}
