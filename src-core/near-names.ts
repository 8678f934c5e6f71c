/**
 * The names that someone may have meant by `name`, nearest first, at most `limit` of them. Upper and lower case
 * count as alike; about one slip of the keyboard in three letters is forgiven, but next to a near name those that
 * are much farther off do not count.
 */
export function nearestNames(name: string, candidates: readonly string[], limit = 3): readonly string[] {
  const wanted = name.toLowerCase();
  const scored: { readonly candidate: string; readonly distance: number }[] = [];
  for (const candidate of candidates) {
    const forgiven = slipsForgiven(Math.max(wanted.length, candidate.length));
    if (Math.abs(wanted.length - candidate.length) > forgiven) continue;
    const distance = slips(wanted, candidate.toLowerCase());
    if (distance <= forgiven) scored.push({ candidate, distance });
  }
  scored.sort((a, b) => a.distance - b.distance);
  const nearest = scored[0]?.distance ?? 0;
  return scored
    .filter(({ distance }) => distance <= nearest + 1)
    .slice(0, limit)
    .map((each) => each.candidate);
}

function slipsForgiven(length: number): number {
  if (length <= 2) return 0;
  return Math.max(1, Math.floor(length / 3));
}

/** Letters put in, left out, changed, or swapped with a neighbour, to get from one word to the other. */
function slips(from: string, to: string): number {
  let beforeLast: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current: number[] = [row];
    for (let column = 1; column <= to.length; column++) {
      const changed = from[row - 1] === to[column - 1] ? 0 : 1;
      const swapped =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      current.push(
        Math.min(
          (last[column] ?? 0) + 1,
          (current[column - 1] ?? 0) + 1,
          (last[column - 1] ?? 0) + changed,
          swapped ? (beforeLast[column - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY,
        ),
      );
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length] ?? 0;
}
