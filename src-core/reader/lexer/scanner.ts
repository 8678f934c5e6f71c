import type { TokenKind } from "../tokens.ts";
import { isDigit, isHexDigit, isIdentifierPart, isIdentifierStart } from "./characters.ts";
import { punctuatorAt } from "./punctuators.ts";
import { spliceEnd } from "./splices.ts";

export type Language = "c" | "c++";

const NEWLINE = 10;
const DOUBLE_QUOTE = 34;
const SINGLE_QUOTE = 39;
const BACKSLASH = 92;
const DOT = 46;
const PAREN = 40;
const PREFIXES: ReadonlySet<string> = new Set(["L", "u", "U", "u8", "R", "LR", "uR", "UR", "u8R"]);

/**
 * Finds one preprocessing token at a time (C11 6.4, C++20 [lex.pptoken]). The result of `scan` stands in the
 * fields, so that no object is made per token.
 */
export class Scanner {
  readonly text: string;
  private readonly language: Language;
  kind: TokenKind = "other";
  end = 0;
  /** The token's spelling where it is known without cutting it out of the text. */
  spelling: string | undefined;
  /** What is wrong with the token just scanned. */
  problem: string | undefined;
  /** A line splice stands inside the token: what was found ends there and has to be read again joined. */
  spliced = false;

  constructor(text: string, language: Language) {
    this.text = text;
    this.language = language;
  }

  /** Reads the token that starts at `start`, which is neither white space, a comment nor the end. */
  scan(start: number): void {
    this.spelling = undefined;
    this.problem = undefined;
    this.spliced = false;
    const code = this.text.charCodeAt(start);
    if (isIdentifierStart(code)) this.identifier(start);
    else if (isDigit(code) || (code === DOT && isDigit(this.text.charCodeAt(start + 1)))) this.number(start);
    else if (code === DOUBLE_QUOTE || code === SINGLE_QUOTE) this.quoted(start);
    else if (code === BACKSLASH && this.universalName(start) > start) this.identifier(start);
    else this.punctuator(start);
  }

  private punctuator(start: number): void {
    const found = punctuatorAt(this.text, start);
    // C++11 [lex.pptoken]: `<::` is `<` and `::` unless `:` or `>` follows.
    const isScope = found === "<:" && this.language === "c++" && this.text[start + 2] === ":";
    const spelling = isScope && !":>".includes(this.text[start + 3] ?? " ") ? "<" : found;
    this.spelling = spelling;
    this.kind = spelling === undefined ? "other" : "punctuator";
    this.end = start + (spelling?.length ?? 1);
    if (spelling === undefined && this.text.charCodeAt(start) === 0xfffd) {
      this.problem = "Bytes that are not UTF-8 stand here; save the file as UTF-8.";
    }
  }

  private identifier(start: number): void {
    const { text } = this;
    let index = start;
    for (;;) {
      const code = text.charCodeAt(index);
      if (isIdentifierPart(code)) index += 1;
      else if (code === BACKSLASH && this.universalName(index) > index) index = this.universalName(index);
      else break;
    }
    this.kind = "identifier";
    this.end = index;
    const next = text.charCodeAt(index);
    if ((next !== DOUBLE_QUOTE && next !== SINGLE_QUOTE) || index - start > 3) return;
    const prefix = text.slice(start, index);
    if (!PREFIXES.has(prefix)) return;
    if (!prefix.endsWith("R")) this.quoted(index);
    else if (next === DOUBLE_QUOTE) this.rawString(index);
  }

  /** The end of `\uXXXX` or `\UXXXXXXXX` at `position`, or `position` itself. */
  private universalName(position: number): number {
    const mark = this.text[position + 1];
    const digits = mark === "u" ? 4 : mark === "U" ? 8 : 0;
    if (digits === 0) return position;
    for (let index = position + 2; index < position + 2 + digits; index += 1) {
      if (!isHexDigit(this.text.charCodeAt(index))) return position;
    }
    return position + 2 + digits;
  }

  private number(start: number): void {
    const { text } = this;
    let index = start + 1;
    for (;;) {
      const code = text.charCodeAt(index);
      if (isIdentifierPart(code) || code === DOT) {
        const sign = text[index + 1];
        const isExponent = code === 101 || code === 69 || code === 112 || code === 80;
        index += isExponent && (sign === "+" || sign === "-") ? 2 : 1;
      } else if (
        code === SINGLE_QUOTE &&
        this.language === "c++" &&
        isIdentifierPart(text.charCodeAt(index + 1))
      ) {
        index += 2;
      } else break;
    }
    this.kind = "number";
    this.end = index;
  }

  /** A string or character constant whose opening quote stands at `quote`. */
  private quoted(quote: number): void {
    const { text } = this;
    const closing = text.charCodeAt(quote);
    let index = quote + 1;
    for (; index < text.length; index += 1) {
      const code = text.charCodeAt(index);
      if (code === closing) {
        this.kind = closing === DOUBLE_QUOTE ? "string" : "character";
        this.end = this.suffixEnd(index + 1);
        return;
      }
      if (code === NEWLINE) break;
      if (code !== BACKSLASH) continue;
      if (spliceEnd(text, index) >= 0) {
        this.spliced = true;
        break;
      }
      if (text.charCodeAt(index + 1) !== NEWLINE) index += 1;
    }
    this.kind = "other";
    this.end = Math.min(index, text.length);
    if (text[this.end - 1] === "\r") this.end -= 1;
    const mark = closing === DOUBLE_QUOTE ? '"' : "'";
    this.problem = `No closing ${mark} on this line.`;
  }

  /** `R"mark(...)mark"`, which holds line ends and backslashes as they are. */
  private rawString(quote: number): void {
    const { text } = this;
    let index = quote + 1;
    while (index - quote <= 17 && text.charCodeAt(index) !== PAREN && index < text.length) index += 1;
    const mark = text.slice(quote + 1, index);
    if (text.charCodeAt(index) !== PAREN || /[\s\\)]/.test(mark)) return;
    const close = `)${mark}"`;
    const end = text.indexOf(close, index + 1);
    this.kind = end < 0 ? "other" : "string";
    this.end = end < 0 ? text.length : this.suffixEnd(end + close.length);
    if (end < 0) this.problem = `The raw string is not closed; ${close} has to end it.`;
  }

  /** The end of a user-defined suffix such as `_ms`; letters without `_` are left to be macro names. */
  private suffixEnd(position: number): number {
    if (this.language === "c" || this.text[position] !== "_") return position;
    let index = position;
    while (isIdentifierPart(this.text.charCodeAt(index))) index += 1;
    return index;
  }
}
