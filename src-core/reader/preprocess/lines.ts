/** Offsets at which the lines of a text begin. */
export function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let end = text.indexOf("\n"); end >= 0; end = text.indexOf("\n", end + 1)) starts.push(end + 1);
  return starts;
}

/** The line of an offset, from 1. */
export function lineAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle;
  }
  return low + 1;
}
