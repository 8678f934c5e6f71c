/** The lines that differ, each behind `-` or `+`, with one line that stays before and after each change. */
export function changedLines(before: string, after: string): readonly string[] {
  const rows = aligned(before.split("\n"), after.split("\n"));
  const isNear = (index: number): boolean =>
    rows.slice(Math.max(0, index - 1), index + 2).some(({ sign }) => sign !== " ");
  return rows.flatMap(({ sign, text }, index) => (isNear(index) ? [`${sign}${text}`.trimEnd()] : []));
}

interface Row {
  readonly sign: " " | "-" | "+";
  readonly text: string;
}

/** By the longest common subsequence; texts are as short as examples are. */
function aligned(a: readonly string[], b: readonly string[]): readonly Row[] {
  const common = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
  const at = (i: number, j: number): number => common[i]?.[j] ?? 0;
  for (let i = a.length - 1; i >= 0; i -= 1) {
    for (let j = b.length - 1; j >= 0; j -= 1) {
      const row = common[i];
      if (row !== undefined)
        row[j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  }
  const rows: Row[] = [];
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    const [left, right] = [a[i], b[j]];
    if (left !== undefined && left === right) {
      rows.push({ sign: " ", text: left });
      i += 1;
      j += 1;
    } else if (left !== undefined && (right === undefined || at(i + 1, j) >= at(i, j + 1))) {
      rows.push({ sign: "-", text: left });
      i += 1;
    } else {
      rows.push({ sign: "+", text: right ?? "" });
      j += 1;
    }
  }
  return rows;
}
