/** Lets what waits (edits, cancellations) be heard before more work is done. */
export function letOthersRun(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/** Calls `work` once things have been quiet for a while; each `poke` starts the wait anew. */
export class QuietTimer {
  readonly #work: () => void;
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #waiting: (() => void)[] = [];

  constructor(work: () => void) {
    this.#work = work;
  }

  poke(milliseconds: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#work();
      this.#end();
    }, milliseconds);
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#end();
  }

  /** Resolves when `work` was called, or at once where nothing is waited for. */
  quiet(): Promise<void> {
    if (this.#timer === undefined) return Promise.resolve();
    return new Promise((resolve) => this.#waiting.push(resolve));
  }

  #end(): void {
    this.#timer = undefined;
    for (const resolve of this.#waiting.splice(0)) resolve();
  }
}

/** Calls `work` unless it is at work; then once more behind that, however often it was asked for meanwhile. */
export function oneAtATime(work: () => Promise<void>): () => void {
  let isAtWork = false;
  let isWanted = false;
  const start = async (): Promise<void> => {
    isAtWork = true;
    do {
      isWanted = false;
      await work();
    } while (isWanted);
    isAtWork = false;
  };
  return () => {
    isWanted = true;
    if (!isAtWork) void start();
  };
}
