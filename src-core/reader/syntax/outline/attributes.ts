import type { Attribute } from "../nodes.ts";
import { attributeWords } from "./words.ts";

/** What attribute syntax a chunk holds: found before anything else is read, because it may stand nearly anywhere. */
export interface FoundAttributes {
  readonly attributes: readonly Attribute[];
  /** By token: it belongs to attribute syntax and is not shown to the grammar. */
  readonly hidden: Uint8Array;
}

/** Reads `__attribute__((...))` (gcc manual, "Attribute Syntax"), `[[...]]` (C++ [dcl.attr]) and `alignas(...)`. */
export function findAttributes(texts: readonly string[], partner: Int32Array): FoundAttributes {
  const attributes: Attribute[] = [];
  const hidden = new Uint8Array(texts.length);
  for (let index = 0; index < texts.length; index += 1) {
    const end = attributeSyntax(texts, partner, index, attributes);
    if (end === index) continue;
    hidden.fill(1, index, end);
    index = end - 1;
  }
  return { attributes, hidden };
}

/** The index behind the attribute syntax at `index`; `index` itself where none stands there. */
function attributeSyntax(
  texts: readonly string[],
  partner: Int32Array,
  index: number,
  into: Attribute[],
): number {
  const text = texts[index] ?? "";
  if (text === "__extension__") return index + 1;
  // C11 6.10.9: a pragma wherever a token may stand.
  if (text === "_Pragma") return Math.max(index, closeOf(texts, partner, index + 1, "(") + 1);
  if (attributeWords.has(text)) {
    const close = closeOf(texts, partner, index + 1, "(");
    const innerClose = closeOf(texts, partner, index + 2, "(");
    if (close < 0 || innerClose < 0) return index;
    readList(texts, partner, index + 3, innerClose, into);
    return close + 1;
  }
  if (text === "[" && texts[index + 1] === "[") {
    const close = partner[index] ?? -1;
    const innerClose = partner[index + 1] ?? -1;
    if (close < 0 || innerClose !== close - 1) return index;
    readList(texts, partner, index + 2, innerClose, into);
    return close + 1;
  }
  if (text === "alignas" || text === "_Alignas") {
    const close = closeOf(texts, partner, index + 1, "(");
    if (close < 0) return index;
    into.push({
      first: index,
      end: close + 1,
      name: "aligned",
      arguments: argumentTexts(texts, partner, index + 2, close),
    });
    return close + 1;
  }
  return index;
}

function closeOf(texts: readonly string[], partner: Int32Array, index: number, opener: string): number {
  return texts[index] === opener ? (partner[index] ?? -1) : -1;
}

/** `a, b(1, 2), gnu::c` between `first` and `end`. */
function readList(
  texts: readonly string[],
  partner: Int32Array,
  first: number,
  end: number,
  into: Attribute[],
): void {
  let index = first;
  while (index < end) {
    const start = index;
    if (texts[index + 1] === "::") index += 2;
    const name = texts[index] ?? "";
    let args: readonly string[] = [];
    let next = index + 1;
    if (texts[next] === "(") {
      const close = Math.min(partner[next] ?? end, end);
      if (close > next) args = argumentTexts(texts, partner, next + 1, close);
      next = close > next ? close + 1 : end;
    }
    if (name !== ",") into.push({ first: start, end: next, name, arguments: args });
    while (next < end && texts[next] !== ",") next += 1;
    index = next + 1;
  }
}

/** Arguments as written, cut at the commas between `first` and `end`. */
function argumentTexts(
  texts: readonly string[],
  partner: Int32Array,
  first: number,
  end: number,
): readonly string[] {
  if (first >= end) return [];
  const found: string[] = [];
  let current = "";
  for (let index = first; index < end; index += 1) {
    const text = texts[index] ?? "";
    const close = partner[index] ?? -1;
    if (text === ",") {
      found.push(current);
      current = "";
    } else if (close > index && close < end) {
      current += texts.slice(index, close + 1).join(" ");
      index = close;
    } else current += current === "" ? text : ` ${text}`;
  }
  found.push(current);
  return found;
}
