/** A sequence of numbers from 0 to below 1, the same for the same seed: a linear congruential generator. */
export function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    // Constants of Numerical Recipes, "Quick and Dirty" generators.
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Pieces in random order, some of them cut or doubled. */
export function randomText(random: () => number, pieces: readonly string[], count: number): string {
  let text = "";
  for (let index = 0; index < count; index++) {
    const piece = pieces[Math.floor(random() * pieces.length)] ?? "";
    const cut = random() < 0.2 ? Math.floor(random() * piece.length) : piece.length;
    text += piece.slice(0, cut);
  }
  return text;
}
