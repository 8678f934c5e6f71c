/** Milliseconds, sorted. */
export type Times = readonly number[];

/**
 * Times of each work, measured in turn so that whatever else the machine does falls on all of them. The first
 * rounds are not counted: the engine is still warming up. A work that measures itself returns its milliseconds.
 */
export function inTurn(rounds: number, works: readonly (() => unknown)[]): readonly Times[] {
  const times: number[][] = works.map(() => []);
  const warmUp = Math.min(2 * rounds, 80);
  for (let round = 0; round < warmUp + rounds; round++) {
    for (const [index, work] of works.entries()) {
      const start = performance.now();
      const own = work();
      const took = typeof own === "number" ? own : performance.now() - start;
      if (round >= warmUp) times[index]?.push(took);
    }
  }
  return times.map((each) => each.sort((a, b) => a - b));
}

export function median(times: Times): number {
  return times[Math.floor(times.length / 2)] ?? 0;
}
