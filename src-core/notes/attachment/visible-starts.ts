import type { Span } from "../../finding.ts";
import { visibleSpan } from "../../reader/tokens.ts";
import type { ReadUnit } from "./declared.ts";
import { type FileCode, firstFrom } from "./file-code.ts";

/**
 * By file, the offsets at which something begins that at least one unit has really read: tokens, macro calls and
 * `#define` lines. What starts nowhere here stands in a skipped group.
 */
export type VisibleStarts = ReadonlyMap<string, Offsets>;

/** Some offsets of a text. */
export interface Offsets {
  has(offset: number): boolean;
  /** Whether one lies from `start` up to `end`, exclusive. */
  anyIn(start: number, end: number): boolean;
}

export const noOffsets: Offsets = { has: () => false, anyIn: () => false };

/** A mark for each offset: nearly all of a file's tokens are among them, and numbers in a set cost ten times as much. */
class MarkedOffsets implements Offsets {
  readonly #marks: Uint8Array;

  constructor(length: number) {
    this.#marks = new Uint8Array(length);
  }

  add(offset: number): void {
    this.#marks[offset] = 1;
  }

  has(offset: number): boolean {
    return this.#marks[offset] === 1;
  }

  anyIn(start: number, end: number): boolean {
    const first = this.#marks.indexOf(1, start);
    return first >= 0 && first < end;
  }
}

/** Of the files in `files` only. */
export function visibleStarts(
  units: readonly ReadUnit[],
  files: ReadonlyMap<string, FileCode>,
): VisibleStarts {
  const starts = new Map([...files].map(([file, { text }]) => [file, new MarkedOffsets(text.length)]));
  // Tokens of one file follow one another: their marks are looked up once for all of them.
  let file: string | undefined;
  let ofFile: MarkedOffsets | undefined;
  const add = (span: Span) => {
    if (span.file !== file) {
      file = span.file;
      ofFile = starts.get(file);
    }
    ofFile?.add(span.start);
  };
  for (const { preprocessed } of units) {
    for (const token of preprocessed.tokens) add(token.macro === undefined ? token : visibleSpan(token));
    for (const use of preprocessed.uses) add(use.call);
    for (const { definition } of preprocessed.definitions) {
      const code = definition === undefined ? undefined : files.get(definition.file);
      if (definition === undefined || code === undefined) continue;
      const line = code.directives[firstFrom(code.directives, definition.start) - 1];
      if (line !== undefined && definition.start < line.end) starts.get(definition.file)?.add(line.start);
    }
  }
  return starts;
}
