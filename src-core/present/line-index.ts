/** A place as editors and compilers count it: both from 1, columns in UTF-16 units. */
export interface LineColumn {
  readonly line: number;
  readonly column: number;
}

/** Finds lines in a text. Lines end at LF, CR LF or a lone CR, as in the Language Server Protocol. */
export class LineIndex {
  readonly #text: string;
  readonly #starts: readonly number[];

  constructor(text: string) {
    this.#text = text;
    const starts = [0];
    for (const match of text.matchAll(/\r\n|\r|\n/g)) starts.push(match.index + match[0].length);
    this.#starts = starts;
  }

  /** Offsets outside the text count as its nearer end. */
  placeOf(offset: number): LineColumn {
    const inside = Math.max(0, Math.min(offset, this.#text.length));
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((this.#starts[middle] ?? 0) <= inside) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: inside - (this.#starts[low] ?? 0) + 1 };
  }

  /** The line's text without its end; empty for a line that is not there. */
  lineText(line: number): string {
    const start = this.#starts[line - 1];
    if (start === undefined) return "";
    const next = this.#starts[line] ?? this.#text.length;
    return this.#text.slice(start, next).replace(/[\r\n]+$/, "");
  }
}

/** Line indexes of many files, each made when first asked for. */
export class FileLines {
  readonly #read: (file: string) => string | undefined;
  readonly #known = new Map<string, LineIndex>();

  /** `read` gives a file's text, or undefined where it can no longer be read. */
  constructor(read: (file: string) => string | undefined) {
    this.#read = read;
  }

  of(file: string): LineIndex {
    const known = this.#known.get(file);
    if (known !== undefined) return known;
    const made = new LineIndex(this.#read(file) ?? "");
    this.#known.set(file, made);
    return made;
  }
}
