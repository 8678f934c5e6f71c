/** What the user was told already: a server that is started again says the same again. */
export class ToldOnce {
  readonly #told = new Set<string>();

  /** The first of what is said now that was never said before; undefined where nothing is new. */
  firstNews(sentences: readonly string[]): string | undefined {
    const first = sentences.find((sentence) => !this.#told.has(sentence));
    for (const sentence of sentences) this.#told.add(sentence);
    return first;
  }
}
