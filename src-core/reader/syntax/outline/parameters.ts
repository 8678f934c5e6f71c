import { meansType, peekChain, startsChain } from "./chains.ts";
import { type DeclaratorContext, declarator } from "./declarators.ts";
import { expression, onlyComma } from "./expressions.ts";
import type { Scan } from "./scan.ts";
import { specifiers } from "./specifiers.ts";
import { isTypeWord, qualifiers, recordKeywords, storageWord, typeofWords } from "./words.ts";

/** Presents the parameters between `from` and the parenthesis at `to`; gives their names. */
export function parameters(scan: Scan, from: number, to: number): readonly string[] {
  const names: string[] = [];
  let at = from;
  while (at < to) {
    const start = at;
    if (scan.text(at) === "...") at += 1;
    else {
      const specified = specifiers(scan, at, to, "parameter");
      const end = scan.nested(() =>
        declarator(scan, specified.next, to, { ...specified, where: "parameter" }),
      );
      if (end.name !== undefined) names.push(end.name);
      at = end.next;
      if (scan.text(at) === "=") {
        // The grammar has no default values for parameters without a name.
        if (!end.named && scan.text(at - 1) !== "]" && scan.text(at - 1) !== ")") scan.phantom(at, "_");
        at = expression(scan, at + 1, to, onlyComma);
      }
    }
    while (at < to && scan.text(at) !== ",") at += 1;
    if (scan.text(at) === ",") at += 1;
    if (at === start) at += 1;
  }
  return names;
}

/**
 * Whether `(` behind a declared name starts parameters or a constructor's arguments: what can be a parameter
 * is one (C++ [stmt.ambig], [dcl.ambig.res]). `from` is behind the parenthesis, `to` is the closing one.
 */
export function isParameterList(scan: Scan, from: number, to: number, context: DeclaratorContext): boolean {
  if (scan.language === "c" || from >= to || context.where === "class") return true;
  const { type, storage } = context;
  if (type.kind === "none" || storage.includes("typedef")) return true;
  if (type.kind === "words" && type.words.includes("void") && scan.text(from) !== "void") {
    // Nothing of type void can be constructed, but a pointer to it can.
    if (!startsValue(scan, from)) return true;
  }
  const text = scan.text(from);
  if (text === "..." || qualifiers.has(text) || recordKeywords.has(text) || typeofWords.has(text))
    return true;
  if (text === "typename" || text === "auto" || storageWord(text, "c++") !== undefined) return true;
  if (isTypeWord(text, "c++")) return !isConversion(scan, from + 1, to);
  if (!startsChain(scan, from)) return false;
  const chain = peekChain(scan, from, to);
  if (chain.kind === "value" || chain.kind === "function-template") return false;
  if (meansType(chain.kind)) return scan.text(chain.next) !== "::" && !isConversion(scan, chain.next, to);
  if (scan.isName(chain.next)) return true;
  if (context.where === "block") return false;
  const next = scan.text(chain.next);
  if (next === "*" || next === "&")
    return !scan.isLiteral(chain.next + 1) && scan.text(chain.next + 1) !== "(";
  return next === "," || chain.next === to || next === "&&" || qualifiers.has(next);
}

function startsValue(scan: Scan, at: number): boolean {
  return scan.isLiteral(at) || scan.text(at) === "&";
}

/** `(3)`, `(x + 1)`, `{...}` behind a type: a value made of it. `(x)` declares a parameter x ([dcl.ambig.res]p3). */
function isConversion(scan: Scan, at: number, to: number): boolean {
  const text = scan.text(at);
  if (text === "{" || text === ".") return true;
  if (text !== "(") return false;
  const first = scan.text(at + 1);
  if (first === "*" || first === "&" || first === ")") return false;
  return !(scan.isName(at + 1) && scan.close(at, to) === at + 2);
}
