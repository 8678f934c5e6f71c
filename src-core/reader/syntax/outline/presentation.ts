import type { Token } from "../../tokens.ts";
import type { TokenOffsets } from "../grammar/raw-nodes.ts";
import type { Attribute, StorageWord } from "../nodes.ts";
import { reservedWords } from "./reserved-words.ts";
import { alternativeOperators, digraphs, keywords } from "./words.ts";

/** What kind of type specifier the grammar will find where a `SpecifierRecord` stands. */
export type RecordedType =
  | { readonly kind: "words"; readonly words: readonly string[] }
  /** A name, qualified or with template arguments or not. */
  | { readonly kind: "named" }
  /** `struct s`, `enum e` without a body; the name stands in the type's tokens. */
  | { readonly kind: "reference"; readonly keyword: string }
  /** A record or enumeration with its body. */
  | { readonly kind: "body" }
  | { readonly kind: "auto" }
  | { readonly kind: "typeof" }
  | { readonly kind: "none" };

/** Declaration specifiers as the outline found them; the grammar sees nothing of them but the type. */
export interface SpecifierRecord {
  readonly first: number;
  readonly end: number;
  readonly storage: readonly StorageWord[];
  readonly const: boolean;
  readonly volatile: boolean;
  readonly type: RecordedType;
  readonly typeFirst: number;
  readonly typeEnd: number;
}

/** The text for the grammar, and where its tokens lie in it. */
export interface PresentedText {
  readonly text: string;
  readonly offsets: TokenOffsets;
}

/** One statement, declaration or member. */
export interface Item {
  readonly first: number;
  readonly end: number;
}

/**
 * How a chunk is shown to the grammar so that it cannot go wrong: each token as it is, as something else of the
 * same shape, or not at all; text before a token that stands for none; and what was found out on the way.
 */
export class Presentation {
  readonly tokens: readonly Token[];
  readonly language: "c" | "c++";
  readonly texts: string[] = [];
  private readonly phantoms = new Map<number, string>();
  /** By the first token that the grammar sees of the type, or of the declarator where no type is written. */
  readonly specifiers = new Map<number, SpecifierRecord>();
  /** Attributes by their first token, in reading order. */
  readonly attributes: Attribute[] = [];
  /** Last tokens of names that mean a type. */
  readonly typeNames = new Set<number>();
  readonly items: Item[] = [];
  /** Parentheses and square brackets without a partner, by token. */
  readonly unmatched: number[] = [];
  /** What was passed over without being understood. */
  readonly notes: (Item & { readonly what: string })[] = [];
  /** Types written where an argument is expected (`va_arg(list, int)`), by their first token. */
  readonly typeArguments = new Set<number>();
  /** Declarations in the condition of a `for`, shown as assignments: their specifiers by the declared name. */
  readonly declaredConditions = new Map<number, SpecifierRecord>();
  /** Items shown to the grammar as an empty statement, by their last token. */
  readonly blanked = new Map<number, Item>();

  constructor(tokens: readonly Token[], language: "c" | "c++") {
    this.tokens = tokens;
    this.language = language;
    for (const token of tokens) this.texts.push(plainText(token, language));
  }

  hide(index: number): void {
    this.texts[index] = "";
  }

  hideRange(first: number, end: number): void {
    for (let index = first; index < end; index += 1) this.texts[index] = "";
  }

  show(index: number, text: string): void {
    this.texts[index] = text;
  }

  /** Text before the token that the tree will have no node for. */
  phantom(index: number, text: string): void {
    const present = this.phantoms.get(index);
    this.phantoms.set(index, present === undefined ? text : `${present} ${text}`);
  }

  /** Like `phantom`, but takes the place of what was put there before. */
  replacePhantom(index: number, text: string): void {
    this.phantoms.set(index, text);
  }

  /** Shows the item as an empty statement; its place becomes `not-understood`. */
  blank(item: Item): void {
    for (let index = item.first; index < item.end; index += 1) {
      this.texts[index] = "";
      this.phantoms.delete(index);
    }
    this.texts[item.end - 1] = ";";
    this.blanked.set(item.end - 1, item);
  }

  text(): PresentedText {
    const { texts } = this;
    const starts: number[] = [];
    let text = "";
    for (let index = 0; index < texts.length; index += 1) {
      const phantom = this.phantoms.get(index);
      if (phantom !== undefined) text += `${phantom} `;
      starts.push(text.length);
      const shown = texts[index] ?? "";
      if (shown !== "") text += `${shown} `;
    }
    return { text, offsets: offsetsOf(text.length, starts, texts) };
  }
}

function offsetsOf(length: number, starts: readonly number[], texts: readonly string[]): TokenOffsets {
  const from = new Int32Array(length + 1).fill(texts.length);
  const to = new Int32Array(length + 1);
  let reached = 0;
  for (let index = 0; index < texts.length; index += 1) {
    const size = (texts[index] ?? "").length;
    if (size === 0) continue;
    const start = starts[index] ?? 0;
    // Every offset up to the token's last character sees this token as the next to end.
    for (; reached < start + size; reached += 1) from[reached] = index;
    to[start + 1] = index + 1;
  }
  for (let offset = 1; offset <= length; offset += 1) {
    to[offset] = Math.max(to[offset] ?? 0, to[offset - 1] ?? 0);
  }
  return { from, to };
}

function plainText(token: Token, language: "c" | "c++"): string {
  const { text } = token;
  switch (token.kind) {
    case "string":
      return '""';
    case "character":
      return "'0'";
    case "number":
      // The grammar tells a pure virtual function by its `0`; all other numbers are alike to it.
      return text === "0" ? text : "1";
    case "identifier":
      if (language === "c++") {
        const operator = alternativeOperators.get(text);
        if (operator !== undefined) return operator;
      }
      return reservedWords.has(text) && !keywords[language].has(text) ? `${text}_` : text;
    case "punctuator":
      return digraphs.get(text) ?? text;
    case "other":
      return "@";
  }
}
