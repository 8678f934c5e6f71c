import { nearestNames } from "../../near-names.ts";
import type { Comment } from "../../reader/tokens.ts";
import { type NoteWord, splitWords, type Word } from "./word.ts";

/** One `@wire` and the words behind it, up to the end of its line or comment. */
export interface NoteLine extends Word {
  /** `@wire` as written. */
  readonly marker: Word;
  readonly words: readonly NoteWord[];
  /** The comment that holds it. */
  readonly comment: Comment;
}

/** Ornaments that may stand between the start of a comment's line and its text. */
const ORNAMENT = /^[\s/*!<>#-]*$/;
const MARKER = /@wire(?![\w-])/gi;

/**
 * The notes of one comment, in order. Behind other text on the same line `@wire` counts only with a word that
 * is, or nearly is, one of `directives`, and never within quotes: a comment may talk about notes.
 */
export function noteLines(comment: Comment, directives: readonly string[]): readonly NoteLine[] {
  const found: NoteLine[] = [];
  for (const line of contentLines(comment)) {
    for (const match of line.text.matchAll(MARKER)) {
      const before = line.text.slice(0, match.index);
      if (/[\w`"'@.]$/.test(before)) continue;
      const note = noteAt(comment, line, match.index, match[0]);
      if (ORNAMENT.test(before) || startsLikeNote(note, directives)) {
        found.push(note);
        break;
      }
    }
  }
  return found;
}

function noteAt(comment: Comment, line: ContentLine, index: number, marker: string): NoteLine {
  const { file } = comment;
  const start = line.start + index;
  const after = index + marker.length;
  const words = splitWords(file, line.text.slice(after), line.start + after);
  const end = words.at(-1)?.end ?? start + marker.length;
  const text = line.text.slice(index, end - line.start);
  const markerWord = { file, start, end: start + marker.length, text: marker };
  return { file, start, end, text, marker: markerWord, words, comment };
}

function startsLikeNote(note: NoteLine, directives: readonly string[]): boolean {
  const first = note.words[0];
  if (first === undefined || first.kind !== "plain") return false;
  return directives.includes(first.text) || nearestNames(first.text, directives, 1).length > 0;
}

interface ContentLine {
  readonly text: string;
  /** Offset of the line's first character in the file. */
  readonly start: number;
}

/** The lines of a comment without its markers; the `*` that closes a boxed line is left out as well. */
function contentLines(comment: Comment): readonly ContentLine[] {
  const block = comment.text.startsWith("/*");
  const closed = block && comment.text.length >= 4 && comment.text.endsWith("*/");
  const content = comment.text.slice(2, closed ? -2 : undefined);
  const lines: ContentLine[] = [];
  let start = comment.start + 2;
  for (const text of content.split("\n")) {
    const trimmed = block ? text.replace(/(\s\*+)?\s*$/, "") : text.replace(/[\s\\]+$/, "");
    lines.push({ text: trimmed, start });
    start += text.length + 1;
  }
  return lines;
}
