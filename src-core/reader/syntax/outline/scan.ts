import type { Token } from "../../tokens.ts";
import type { ChunkNames } from "../names/names.ts";
import { findAttributes } from "./attributes.ts";
import { type Brackets, matchBrackets } from "./brackets.ts";
import { Presentation, type SpecifierRecord } from "./presentation.ts";
import { alternativeOperators, digraphs, isTypeWord, keywords } from "./words.ts";

/** Nesting beyond this is not read: C promises 127 levels of blocks (C11 5.2.4.1). */
export const deepestNesting = 250;

const smallBrackets: ReadonlySet<string> = new Set(["(", ")", "[", "]"]);

/** Thrown inside the outline and caught where a chunk begins. */
export class TooDeep extends Error {}

/**
 * The chunk as its outline is read: tokens without attributes, by position. Positions are turned into token
 * indexes where something is told to the presentation.
 */
export class Scan {
  readonly language: "c" | "c++";
  readonly names: ChunkNames;
  readonly presentation: Presentation;
  /** Number of positions. */
  readonly length: number;
  readonly nesting: number;
  private readonly tokens: readonly Token[];
  private readonly texts: string[] = [];
  private readonly indexes: number[] = [];
  private readonly partner: Int32Array;
  private depth = 0;
  /** A template's header was just read: what is declared next is a template. */
  templated = false;

  constructor(tokens: readonly Token[], names: ChunkNames) {
    this.language = names.language;
    this.names = names;
    this.tokens = tokens;
    this.presentation = new Presentation(tokens, names.language);
    const all = tokens.map((token) => spelling(token, names.language));
    const brackets = matchBrackets(all);
    const { attributes, hidden } = findAttributes(all, brackets.partner);
    this.presentation.attributes.push(...attributes);
    for (let index = 0; index < all.length; index += 1) {
      if (hidden[index] === 1) this.presentation.hide(index);
      else {
        this.texts.push(all[index] ?? "");
        this.indexes.push(index);
      }
    }
    this.length = this.indexes.length;
    this.nesting = brackets.depth;
    this.partner = this.positions(brackets, all.length);
  }

  text(position: number): string {
    return this.texts[position] ?? "";
  }

  /** The token's index; behind the last one for a position behind the last. */
  index(position: number): number {
    return this.indexes[position] ?? this.tokens.length;
  }

  /** Token index behind the token before `position`. */
  endIndex(position: number): number {
    return position === 0 ? 0 : (this.indexes[position - 1] ?? this.tokens.length - 1) + 1;
  }

  /**
   * The bracket that closes the one at `position`, at most `to`. Where none does, a parenthesis ends before the
   * next semicolon or brace, so that what was left open spoils one statement only.
   */
  close(position: number, to: number): number {
    const partner = this.partner[position] ?? -1;
    if (partner > to) return to;
    if (partner >= 0) return partner;
    return this.text(position) === "{" ? to : this.statementEnd(position, to) - 1;
  }

  /** A word, operators spelt as words (`and`) apart. */
  isIdentifier(position: number): boolean {
    const token = this.tokens[this.index(position)];
    return token?.kind === "identifier" && token.text === this.texts[position];
  }

  isNumber(position: number): boolean {
    return this.tokens[this.index(position)]?.kind === "number";
  }

  isLiteral(position: number): boolean {
    const kind = this.tokens[this.index(position)]?.kind;
    return kind === "number" || kind === "character" || kind === "string";
  }

  /** An identifier that is neither a keyword nor a word for a basic type. */
  isName(position: number): boolean {
    if (!this.isIdentifier(position)) return false;
    const text = this.text(position);
    return !keywords[this.language].has(text) && !isTypeWord(text, this.language);
  }

  hide(position: number): void {
    this.presentation.hide(this.index(position));
  }

  hideRange(from: number, to: number): void {
    for (let position = from; position < to; position += 1) this.hide(position);
  }

  show(position: number, text: string): void {
    this.presentation.show(this.index(position), text);
  }

  phantom(position: number, text: string): void {
    this.presentation.phantom(this.index(position), text);
  }

  /** Keeps specifiers under the first token that the grammar sees of their type or, without one, behind them. */
  record(position: number, record: SpecifierRecord): void {
    this.presentation.specifiers.set(this.index(position), record);
  }

  note(from: number, to: number, what: string): void {
    this.presentation.notes.push({ first: this.index(from), end: this.endIndex(to), what });
  }

  item(from: number, to: number): void {
    if (to > from) this.presentation.items.push({ first: this.index(from), end: this.endIndex(to) });
  }

  /** Runs `read` one level deeper. */
  nested<T>(read: () => T): T {
    this.depth += 1;
    if (this.depth > 4 * deepestNesting) throw new TooDeep();
    try {
      return read();
    } finally {
      this.depth -= 1;
    }
  }

  private statementEnd(from: number, to: number): number {
    for (let position = from + 1; position < to; position += 1) {
      const text = this.texts[position];
      if (text === ";" || text === "{" || text === "}") return position;
      const partner = this.partner[position] ?? -1;
      if (partner > position) position = partner;
    }
    return to + 1;
  }

  private positions(brackets: Brackets, count: number): Int32Array {
    const positionOf = new Int32Array(count).fill(-1);
    for (let position = 0; position < this.indexes.length; position += 1) {
      positionOf[this.indexes[position] ?? 0] = position;
    }
    const partner = new Int32Array(this.indexes.length).fill(-1);
    for (let position = 0; position < this.indexes.length; position += 1) {
      const other = brackets.partner[this.indexes[position] ?? 0] ?? -1;
      if (other >= 0) partner[position] = positionOf[other] ?? -1;
      else if (smallBrackets.has(this.text(position))) this.presentation.unmatched.push(this.index(position));
    }
    return partner;
  }
}

function spelling(token: Token, language: "c" | "c++"): string {
  const { text } = token;
  if (token.kind === "punctuator") return digraphs.get(text) ?? text;
  if (token.kind === "identifier" && language === "c++") return alternativeOperators.get(text) ?? text;
  return text;
}
