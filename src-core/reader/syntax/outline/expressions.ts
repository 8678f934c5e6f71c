import { meansType, peekChain, startsChain } from "./chains.ts";
import { items } from "./items.ts";
import { lambda } from "./lambdas.ts";
import { list } from "./lists.ts";
import { operatorInExpression } from "./operator-names.ts";
import { alignOf, namedCast, newExpression, nextArgument, offsetOf, sizeOf } from "./operators.ts";
import type { Scan } from "./scan.ts";
import { specifiers } from "./specifiers.ts";
import { isTypeId, mayFollowBoth, presentChain, typeName } from "./type-names.ts";
import { alignofWords, isTypeWord, namedCasts } from "./words.ts";

export type Stops = ReadonlySet<string>;
export const noStops: Stops = new Set();
export const onlyComma: Stops = new Set([","]);
export const onlySemicolon: Stops = new Set([";"]);
export const commaOrSemicolon: Stops = new Set([",", ";"]);

/** Words that start a statement: an expression that meets one was not ended. */
const statementWords: ReadonlySet<string> = new Set([
  "if",
  "for",
  "while",
  "do",
  "switch",
  "return",
  "break",
  "continue",
  "goto",
  "case",
  "default",
  "else",
]);

/** Where an expression is read up to, and whether an operand or an operator comes next. */
export interface Step {
  readonly next: number;
  readonly operand: boolean;
}

/**
 * Presents an expression from `from` to the first of `stops` outside brackets, or to `to`: casts and
 * parentheses, comparisons and template arguments are told apart by names.
 */
export function expression(scan: Scan, from: number, to: number, stops: Stops): number {
  let at = from;
  let operand = true;
  while (at < to) {
    const text = scan.text(at);
    if (stops.has(text) || (statementWords.has(text) && scan.isIdentifier(at))) return at;
    const step: Step = operand ? operandStep(scan, at, to, text) : operatorStep(scan, at, to, text);
    at = step.next;
    operand = step.operand;
  }
  return to;
}

/** At a place where an operand or an operator before one is due. */
function operandStep(scan: Scan, at: number, to: number, text: string): Step {
  switch (text) {
    case "(":
      return parenthesis(scan, at, to);
    case "[":
      if (scan.language === "c++") return { next: lambda(scan, at, to), operand: false };
      expression(scan, at + 1, scan.close(at, to), noStops);
      return { next: scan.close(at, to) + 1, operand: false };
    case "{":
      return { next: list(scan, at, to), operand: false };
  }
  if (scan.isLiteral(at)) return { next: at + 1, operand: false };
  if (!scan.isIdentifier(at) && text !== "::") return { next: at + 1, operand: !closesSomething(text) };
  if (startsChain(scan, at) && text !== "offsetof") return nameOperand(scan, at, to);
  return wordOperand(scan, at, to, text);
}

const closesSomething = (text: string): boolean => text === ")" || text === "]" || text === "}";

function nameOperand(scan: Scan, at: number, to: number): Step {
  const text = scan.text(at);
  if (text === "__builtin_offsetof") return { next: offsetOf(scan, at, to), operand: false };
  if (text === "__builtin_va_arg" && scan.text(at + 1) === "(")
    return { next: nextArgument(scan, at, to), operand: false };
  const chain = peekChain(scan, at, to);
  presentChain(scan, chain);
  if (meansType(chain.kind) && (scan.text(chain.next) === "(" || scan.text(chain.next) === "{")) {
    scan.presentation.typeNames.add(scan.index(chain.last));
    if (chain.simple) specifiers(scan, at, chain.next, "type");
  }
  if (scan.text(chain.next) === "::" && scan.text(chain.next + 1) === "operator") {
    return { next: operatorInExpression(scan, chain.next + 1, to), operand: false };
  }
  return { next: chain.next, operand: false };
}

/** Keywords. */
function wordOperand(scan: Scan, at: number, to: number, text: string): Step {
  switch (text) {
    case "sizeof":
      return sizeOf(scan, at, to);
    case "offsetof":
      return { next: offsetOf(scan, at, to), operand: false };
    case "new":
      return { next: newExpression(scan, at, to), operand: false };
    case "delete":
      return { next: scan.text(at + 1) === "[" ? at + 3 : at + 1, operand: true };
    case "operator":
      return { next: operatorInExpression(scan, at, to), operand: false };
    case "typename":
      scan.hide(at);
      return { next: at + 1, operand: true };
    case "this":
    case "true":
    case "false":
    case "nullptr":
      return { next: at + 1, operand: false };
  }
  if (alignofWords.has(text)) return { next: alignOf(scan, at, to), operand: false };
  if (namedCasts.has(text)) return { next: namedCast(scan, at, to), operand: false };
  // `uint8_t(x)` spelt with a word of the language.
  if (isTypeWord(text, scan.language)) return { next: specifiers(scan, at, to, "type").next, operand: false };
  return { next: at + 1, operand: text === "throw" };
}

function operatorStep(scan: Scan, at: number, to: number, text: string): Step {
  switch (text) {
    case "(":
    case "[":
      callArguments(scan, at + 1, scan.close(at, to));
      return { next: scan.close(at, to) + 1, operand: false };
    case "{":
      return { next: list(scan, at, to), operand: false };
    case ".":
    case "->":
      return { next: member(scan, at + 1, to), operand: false };
    // Comparisons of the same precedence that nothing takes for template brackets.
    case "<":
      scan.show(at, "<=");
      return { next: at + 1, operand: true };
    case ">":
      scan.show(at, ">=");
      return { next: at + 1, operand: true };
    case "++":
    case "--":
      return { next: at + 1, operand: false };
  }
  if (closesSomething(text) || scan.isIdentifier(at) || scan.isLiteral(at)) {
    return { next: at + 1, operand: false };
  }
  return { next: at + 1, operand: true };
}

function member(scan: Scan, at: number, to: number): number {
  if (scan.text(at) === "operator") return operatorInExpression(scan, at, to);
  if (scan.text(at) === "~") return at + 2;
  if (!startsChain(scan, at)) return at;
  const chain = peekChain(scan, at, to);
  // A member is no template unless it was declared as one or a type follows: `a.x < b`.
  if (chain.angles.length === 0) return chain.next;
  presentChain(scan, chain);
  return chain.next;
}

/** Presents the arguments of a call; a type among them (`va_arg(list, int)`) is shown as a number. */
function callArguments(scan: Scan, from: number, to: number): void {
  scan.nested(() => {
    let at = from;
    while (at < to) {
      const start = at;
      if (isTypeArgument(scan, at)) {
        const next = typeName(scan, at, to);
        scan.hideRange(at, next);
        scan.show(at, "1");
        scan.presentation.typeArguments.add(scan.index(at));
        at = next;
      } else at = expression(scan, at, to, onlyComma);
      if (scan.text(at) === ",") at += 1;
      if (at === start) at += 1;
    }
  });
}

function isTypeArgument(scan: Scan, at: number): boolean {
  const text = scan.text(at);
  const next = scan.text(at + 1);
  if (!isTypeWord(text, scan.language) && !(scan.isName(at) && scan.names.lookup(text) === "type")) {
    return text === "struct" || text === "union" || text === "enum";
  }
  return next === ")" || next === "," || next === "*" || isTypeWord(next, scan.language);
}

/** A parenthesis where an operand is due: a cast, a compound literal, statements with a value, or a group. */
function parenthesis(scan: Scan, open: number, to: number): Step {
  const close = scan.close(open, to);
  if (scan.text(open + 1) === "{") {
    scan.nested(() => {
      const inner = scan.close(open + 1, close);
      scan.names.enter();
      items(scan, open + 2, inner, "block");
      scan.names.leave();
    });
    return { next: close + 1, operand: false };
  }
  if (isTypeId(scan, open + 1, close)) {
    scan.nested(() => typeName(scan, open + 1, close));
    return { next: close + 1, operand: true };
  }
  group(scan, open, close);
  return { next: close + 1, operand: false };
}

/**
 * A value in parentheses, shown so that it is no type whatever follows (C11 6.5.1p5, 6.5.4), and no pack folded
 * by an operator, which the grammar expects behind `(a = 1` where a comma follows.
 */
export function group(scan: Scan, open: number, close: number): void {
  const startsName = startsChain(scan, open + 1) || isTypeWord(scan.text(open + 1), scan.language);
  const maybeType = startsName && mayFollowBoth.has(scan.text(close + 1));
  if (maybeType || hasComma(scan, open + 1, close)) scan.phantom(open + 1, "0 ,");
  scan.nested(() => expression(scan, open + 1, close, noStops));
}

/** Whether a comma stands between `from` and `to` outside brackets. */
function hasComma(scan: Scan, from: number, to: number): boolean {
  for (let at = from; at < to; at += 1) {
    const text = scan.text(at);
    if (text === ",") return true;
    if (text === "(" || text === "[" || text === "{") at = scan.close(at, to);
  }
  return false;
}
