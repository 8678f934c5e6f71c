/** Lets what waits (edits, cancellations) be heard before more work is done. */
export function letOthersRun(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

/** Calls `work` once things have been quiet for a while; each `poke` starts the wait anew. */
export class QuietTimer {
  readonly #work: () => void;
  #timer: NodeJS.Timeout | undefined;

  constructor(work: () => void) {
    this.#work = work;
  }

  poke(milliseconds: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(this.#work, milliseconds);
  }

  stop(): void {
    clearTimeout(this.#timer);
  }
}
