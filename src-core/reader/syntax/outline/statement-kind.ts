import { meansType, peekChain, startsChain } from "./chains.ts";
import type { Scan } from "./scan.ts";
import { isTypeWord, qualifiers, recordKeywords, storageWord, typeofWords } from "./words.ts";

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
  return next === "=" || next === ";" || next === "," || next === "[" || next === ":";
}

/** Behind a type: `(3)`, `(x).y`, `{...}` make a value; `(x);`, `(*f)(int)` declare. */
function startsExpression(scan: Scan, at: number, to: number): boolean {
  const text = scan.text(at);
  if (text === "{" || text === ".") return true;
  if (text !== "(") return false;
  const close = scan.close(at, to);
  const behind = scan.text(close + 1);
  const first = scan.text(at + 1);
  if (first === "*" || first === "&") return behind !== "(" && behind !== "[" && behind !== ")";
  const isName = scan.isName(at + 1) && close === at + 2;
  return !(isName && (behind === ";" || behind === "=" || behind === "," || behind === "["));
}

/** Whether the grammar might take the expression statement at `from` for a declaration. */
export function isUncertain(scan: Scan, from: number, to: number): boolean {
  if (isTypeWord(scan.text(from), scan.language)) return true;
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
