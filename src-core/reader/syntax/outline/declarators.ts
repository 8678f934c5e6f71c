import { meansType, peekChain, startsChain } from "./chains.ts";
import { expression, noStops } from "./expressions.ts";
import { operatorName } from "./operator-names.ts";
import { isParameterList, parameters } from "./parameters.ts";
import type { Scan } from "./scan.ts";
import type { Specified, Where } from "./specifiers.ts";
import { presentChain, typeName } from "./type-names.ts";
import { macrosBefore, passOver } from "./unknown-macros.ts";
import { isTypeWord, qualifiers } from "./words.ts";

/** What the declarator's specifiers say, as far as it decides how the declarator is read. */
export interface DeclaratorContext extends Specified {
  readonly where: Where;
}

export interface DeclaratorEnd {
  readonly next: number;
  /** The declared name; undefined where there is none, or where it is an operator or a destructor. */
  readonly name: string | undefined;
  /** The class before the name: `C` in `C::f`. */
  readonly qualifier: string | undefined;
  readonly isFunction: boolean;
  readonly named: boolean;
  readonly parameterNames: readonly string[];
}

const nothing = {
  name: undefined,
  qualifier: undefined,
  isFunction: false,
  named: false,
  parameterNames: [],
};

/** Presents one declarator (C11 6.7.6, C++ [dcl.decl]), with a name or without. */
export function declarator(scan: Scan, from: number, to: number, context: DeclaratorContext): DeclaratorEnd {
  let at = prefix(scan, from, to);
  if (context.where !== "type") at = macrosBefore(scan, at, to);
  let end: DeclaratorEnd = { ...nothing, next: at };
  if (scan.text(at) === "(" && startsInner(scan, at, to, context)) {
    const close = scan.close(at, to);
    const inner = at + 1;
    end = scan.nested(() => declarator(scan, inner, close, context));
    // `(f)(int)` is `f(int)`; around anything else the parentheses matter.
    const isOnlyName = end.named && startsChain(scan, inner) && end.next === close && !end.isFunction;
    // As a parameter the grammar might take it for a function with a parameter of that type.
    if (isOnlyName && context.where === "parameter") {
      scan.hide(inner - 1);
      scan.hide(close);
    }
    at = close + 1;
    return {
      ...end,
      ...suffixes(scan, at, to, { context, end, inner: !isOnlyName }),
    };
  }
  if (scan.text(at) === "operator" || startsChain(scan, at) || scan.text(at) === "~") {
    end = declaredName(scan, at, to);
    at = end.next;
  } else if (isShadowedWord(scan, at)) {
    end = { ...end, name: scan.text(at), named: true, next: at + 1 };
    at += 1;
  }
  return { ...end, ...suffixes(scan, at, to, { context, end, inner: false }) };
}

/** `bool` in a C typedef: a word for a type where nothing says otherwise, here the name declared. */
function isShadowedWord(scan: Scan, at: number): boolean {
  return scan.language === "c" && scan.text(at) === "bool" && isTypeWord("bool", "c");
}

/** Hides the qualifiers among `*` and `&`; gives the position behind them. */
export function prefix(scan: Scan, from: number, to: number): number {
  let at = from;
  for (; at < to; at += 1) {
    const text = scan.text(at);
    if (qualifiers.has(text)) scan.hide(at);
    else if (text !== "*" && text !== "&" && text !== "&&") break;
  }
  return at;
}

/** Whether `(` opens a declarator in parentheses, not a parameter list (C11 6.7.6.3p11). */
function startsInner(scan: Scan, open: number, to: number, context: DeclaratorContext): boolean {
  const text = scan.text(open + 1);
  if (text === "*" || text === "&" || text === "&&" || text === "(") return true;
  if (!startsChain(scan, open + 1)) return false;
  if (context.where === "type") return false;
  if (context.where !== "parameter") return true;
  const chain = peekChain(scan, open + 1, to);
  return !meansType(chain.kind) && scan.text(chain.next) === ")";
}

function declaredName(scan: Scan, from: number, to: number): DeclaratorEnd {
  let at = from;
  let qualifier: string | undefined;
  if (startsChain(scan, at)) {
    const chain = peekChain(scan, at, to);
    presentChain(scan, chain);
    const behind = scan.text(chain.next + 1);
    if (scan.text(chain.next) !== "::" || (behind !== "~" && behind !== "operator")) {
      const name = scan.text(chain.last);
      return { ...nothing, name, qualifier: chain.qualifier, named: true, next: chain.next };
    }
    qualifier = scan.text(chain.last);
    at = chain.next + 1;
  }
  const next = scan.text(at) === "~" ? at + 2 : operatorName(scan, at, to);
  return { ...nothing, qualifier, named: true, next };
}

interface SuffixContext {
  readonly context: DeclaratorContext;
  readonly end: DeclaratorEnd;
  /** The name stands in parentheses: what follows is no constructor's argument list. */
  readonly inner: boolean;
}

type SuffixEnd = Pick<DeclaratorEnd, "next" | "isFunction" | "parameterNames">;

/** `[3]`, `(int a)` and what may follow them. */
function suffixes(scan: Scan, from: number, to: number, { context, end, inner }: SuffixContext): SuffixEnd {
  let { isFunction, parameterNames } = end;
  let at = from;
  let isCall = false;
  while (at < to) {
    const text = scan.text(at);
    if (text === "[") {
      const close = scan.close(at, to);
      if (scan.text(at + 1) === "static") scan.hide(at + 1);
      expression(scan, at + 1, close, noStops);
      at = close + 1;
    } else if (text === "(" && !isCall) {
      const close = scan.close(at, to);
      if (inner || !end.named || isParameterList(scan, at + 1, close, context)) {
        const found = parameters(scan, at + 1, close);
        if (end.named && !inner && !isFunction) {
          isFunction = true;
          parameterNames = found;
        }
        at = afterParameters(scan, close + 1, to);
      } else {
        // In braces the grammar cannot take them for parameters.
        scan.show(at, "{");
        if (close < to) scan.show(close, "}");
        expression(scan, at + 1, close, noStops);
        isCall = true;
        at = close + 1;
      }
    } else break;
  }
  if (end.named) at = passOver(scan, at, to, context.where);
  return { next: at, isFunction, parameterNames };
}

/** `const`, `noexcept(...)`, `override`, `-> T` behind a parameter list. */
function afterParameters(scan: Scan, from: number, to: number): number {
  let at = from;
  while (at < to) {
    const text = scan.text(at);
    if (qualifiers.has(text) || text === "override" || text === "final" || text === "&" || text === "&&") {
      if (scan.language === "c") break;
      scan.hide(at);
      at += 1;
    } else if ((text === "noexcept" || text === "throw") && scan.language === "c++") {
      const end = scan.text(at + 1) === "(" ? scan.close(at + 1, to) + 1 : at + 1;
      scan.hideRange(at, Math.min(end, to));
      at = end;
    } else if (text === "->" && scan.language === "c++") {
      at = typeName(scan, at + 1, to);
    } else break;
  }
  return at;
}
