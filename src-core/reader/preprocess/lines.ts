import type { FileCursor } from "./file-cursor.ts";

/** Lines and names of the files being read, as `#line` has them. */
export class LinePlaces {
  private readonly open: readonly FileCursor[];
  private readonly starts = new Map<string, readonly number[]>();

  constructor(open: readonly FileCursor[]) {
    this.open = open;
  }

  /** The line of an offset, from 1; 1 for a file that is not open. */
  lineOf(file: string, offset: number): number {
    return this.physicalLine(file, offset) + (this.cursorOf(file)?.lineShift ?? 0);
  }

  nameOf(file: string): string {
    return this.cursorOf(file)?.presumedName ?? file;
  }

  physicalLine(file: string, offset: number): number {
    const known = this.starts.get(file);
    if (known !== undefined) return lineAt(known, offset);
    const starts = lineStarts(this.cursorOf(file)?.lexed.text ?? "");
    this.starts.set(file, starts);
    return lineAt(starts, offset);
  }

  private cursorOf(file: string): FileCursor | undefined {
    return this.open.findLast((cursor) => cursor.lexed.file === file);
  }
}

/** Offsets at which the lines of a text begin. */
function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let end = text.indexOf("\n"); end >= 0; end = text.indexOf("\n", end + 1)) starts.push(end + 1);
  return starts;
}

function lineAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle;
  }
  return low + 1;
}
