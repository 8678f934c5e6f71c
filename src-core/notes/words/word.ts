import type { Span } from "../../finding.ts";

/** A run of characters of a note with its exact place in the file. */
export interface Word extends Span {
  readonly text: string;
}

/** What white space separates in a note. */
export type NoteWord =
  | ({ readonly kind: "plain" } & Word)
  /** `key=value`; either half may be empty. */
  | ({ readonly kind: "pair"; readonly key: Word; readonly value: Word } & Word)
  /** `"..."`: `text` is what stands between the quotes, `\"` and `\\` resolved. */
  | ({ readonly kind: "quoted"; readonly closed: boolean } & Word);

/**
 * Splits one line of a note. `line` is the text from `start` on in `file`; a quote that is not closed runs to
 * the end of the line.
 */
export function splitWords(file: string, line: string, start: number): readonly NoteWord[] {
  const words: NoteWord[] = [];
  let at = 0;
  while (at < line.length) {
    if (isSpace(line, at)) {
      at++;
      continue;
    }
    const end = line[at] === '"' ? endOfQuote(line, at) : endOfRun(line, at);
    words.push(wordOf(file, line.slice(at, end), start + at));
    at = end;
  }
  return words;
}

function isSpace(line: string, at: number): boolean {
  return /\s/.test(line.charAt(at));
}

function endOfRun(line: string, from: number): number {
  let at = from;
  while (at < line.length && !isSpace(line, at)) {
    if (line[at] === '"') return line[at - 1] === "=" ? endOfQuote(line, at) : at;
    at++;
  }
  return at;
}

function endOfQuote(line: string, from: number): number {
  let at = from + 1;
  while (at < line.length && line[at] !== '"') at += line[at] === "\\" ? 2 : 1;
  return Math.min(at + 1, line.length);
}

function wordOf(file: string, text: string, start: number): NoteWord {
  const span = { file, start, end: start + text.length };
  if (text.startsWith('"')) return { kind: "quoted", ...span, ...unquoted(text) };
  const equals = text.indexOf("=");
  if (equals < 0) return { kind: "plain", ...span, text };
  const value = text.slice(equals + 1);
  const valueStart = start + equals + 1;
  return {
    kind: "pair",
    ...span,
    text,
    key: { file, start, end: start + equals, text: text.slice(0, equals) },
    value: {
      file,
      start: valueStart,
      end: span.end,
      text: value.startsWith('"') ? unquoted(value).text : value,
    },
  };
}

function unquoted(text: string): { readonly text: string; readonly closed: boolean } {
  const whole = /^"((?:[^"\\]|\\.)*)("?)/s.exec(text);
  if (whole === null) return { text: text.slice(1), closed: false };
  return { text: (whole[1] ?? "").replace(/\\(["\\])/g, "$1"), closed: whole[2] === '"' };
}
